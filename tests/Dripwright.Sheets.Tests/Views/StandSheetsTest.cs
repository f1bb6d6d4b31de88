using Dripwright.Engine.Layout;
using Dripwright.Language;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Tests.Views;

/// <summary>Sheets from which a stand is printed and put together.</summary>
public sealed class StandSheetsTest
{
    public static TheoryData<string> Gardens => [BenchPlans.School, BenchPlans.FoodBank];

    [Theory]
    [MemberData(nameof(Gardens))]
    public void The_exploded_view_names_every_kind_of_tube_and_numbers_every_joint_of_a_module(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        foreach (var paper in new[] { Paper.A4, Paper.Letter })
        {
            var width = new Flow(paper.Portrait, "").Width;
            foreach (var row in plan.Layout.Rows.DistinctBy(r => r.SpecIndex))
            {
                var height = ExplodedFigure.Height(width, plan.Layout.Stand, plan.Printed.Places, row);
                var box = new Box(0, 0, width, height);
                var drawn = ExplodedFigure.Draw(box, plan.Layout.Stand, plan.Printed.Places, row);

                var texts = Texts([drawn]).ToList();

                var end = row.OriginX + row.Spec.ModuleLength + 1e-6;
                var tubes = plan
                    .Layout.Stand.Members.Where(m => m.Row == row.Number && m.From.X <= end && m.To.X <= end)
                    .Select(m => m.Label)
                    .Distinct();
                Assert.All(tubes, label => Assert.Single(texts, text => text.Content == label));
                foreach (var place in plan.Printed.Places)
                {
                    var joints = place.Joints.Count(j => j.Row == row.Number && j.At.X <= end);
                    Assert.Equal(joints, texts.Count(text => text.Content == place.Number));
                }

                // Two clamps to each brace, numbered like the joints.
                var braces = plan.Layout.Stand.Members.Count(m =>
                    m.Role == MemberRole.Brace && m.Row == row.Number && m.From.X <= end && m.To.X <= end
                );
                Assert.Equal(2 * braces, texts.Count(text => text.Content == StandLayout.ClampNumber));

                Assert.All(texts, text => Assert.True(box.Holds(TextMeasure.Bounds(text)), text.Content));
                var boxes = texts.Select(TextMeasure.Bounds).ToList();
                Assert.All(
                    boxes.SelectMany((a, i) => boxes.Skip(i + 1).Select(b => (a, b))),
                    pair => Assert.False(pair.a.Overlaps(pair.b, 0.2))
                );
            }
        }
    }

    [Theory]
    [MemberData(nameof(Gardens))]
    public void Braces_are_clamped_before_anything_stands_on_the_rails_and_the_caution_is_beside_the_step(string demo)
    {
        var words = string.Join(
            ' ',
            AssemblySheets
                .Draw(BenchPlans.Demo(demo), Paper.A4)
                .SelectMany(sheet => Texts(sheet.Elements))
                .Select(text => text.Content)
        );

        var caution = words.IndexOf("folds up sideways under wet pots", StringComparison.Ordinal);
        var clamp = words.IndexOf("swivel clamps", StringComparison.Ordinal);
        var pots = words.IndexOf("Set the pots of", StringComparison.Ordinal);
        Assert.InRange(caution, 0, clamp);
        Assert.InRange(clamp, 0, pots);
        Assert.Contains("taken down again", words, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Gardens))]
    public void The_sheet_of_printed_parts_says_of_each_its_number_count_place_and_how_it_lies(string demo)
    {
        var plan = BenchPlans.Demo(demo);

        var sheets = PrintedSheets.Draw(plan, [], Paper.Letter);

        var words = string.Join(' ', sheets.SelectMany(s => Texts(s.Elements)).Select(text => text.Content));
        var told = new PlanWords(plan.Rig.Units);
        foreach (var part in plan.Printed.Parts)
        {
            Assert.Contains($"{part.Number}  ", words, StringComparison.Ordinal);
            Assert.Contains(Wording.Sentence(told.Of(part.Use))[1..], words, StringComparison.Ordinal);
            Assert.Contains(told.Of(part.Design.Orientation)[..25], words, StringComparison.Ordinal);
        }

        Assert.Contains("it sags from 65", words, StringComparison.Ordinal);
        Assert.Contains("should stay under 50", words, StringComparison.Ordinal);
    }

    private static IEnumerable<Text> Texts(IEnumerable<Element> elements) =>
        SheetText.Of(elements).Select(found => found.Text);
}
