using System.Globalization;
using CsCheck;
using Dripwright.Engine;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Tests.Views;

public sealed class ViewLawsTest
{
    private static readonly Paper[] s_papers = [Paper.A4, Paper.Letter];

    public static TheoryData<string> Rigs => DemoRigs.All;

    [Theory]
    [MemberData(nameof(Rigs))]
    public void Sheets_of_every_demo_rig_keep_the_laws(string rig)
    {
        var plan = DemoRigs.Plan(rig);
        Assert.All(s_papers, paper => Check(plan, paper));
    }

    [Fact]
    public void Sheets_of_any_rig_keep_the_laws() =>
        RigGen.Rigs.Holds(rig => Check(DemoRigs.Of(rig), s_papers[rig.Rows.Count % 2]), iter: 40);

    [Fact]
    public void Drawn_twice_and_in_another_culture_the_sheets_are_the_same()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var first = Written();
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, Written());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string Written()
        {
            var plan = DemoRigs.Plan(DemoRigs.FoodBank);
            return string.Concat(
                DemoRigs
                    .Drafts(plan, Paper.A4)
                    .Select(d => SvgWriter.Write(DemoRigs.Finished(plan, d), SvgOptions.Inline))
            );
        }
    }

    private static void Check(Plan plan, Paper paper)
    {
        foreach (var draft in DemoRigs.Drafts(plan, paper))
        {
            var sheet = DemoRigs.Finished(plan, draft);
            Assert.All(
                SheetText.Of(draft.Elements),
                text =>
                    Assert.True(
                        sheet.Paper.Frame.Holds(text.Bounds, 0.05),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{draft.Title}: {text.Text.Content} in {text.Bounds}"
                        )
                    )
            );
            IdsAreUnique(draft);
            DimensionsKeepApart(draft);
        }

        EveryPotAndRunIsInThePlan(plan, PlanView.Draw(plan, paper)[0]);
        ScalesAreStandardAndFit(plan, paper);
    }

    private static void IdsAreUnique(SheetDraft draft)
    {
        var ids = DemoRigs.Groups(draft.Elements).Where(g => g.Id is not null).Select(g => g.Id).ToList();
        Assert.Equal(ids.Distinct().Count(), ids.Count);
    }

    private static void DimensionsKeepApart(SheetDraft draft)
    {
        var texts = DemoRigs
            .Groups(draft.Elements)
            .Where(g => g.Class == "dimension")
            .SelectMany(g => SheetText.Of(g.Children))
            .ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            for (var k = i + 1; k < texts.Count; k++)
            {
                // Boxes of letters touch by their white space before the letters do.
                Assert.False(
                    texts[i].Bounds.Inset(0.25).Overlaps(texts[k].Bounds.Inset(0.25)),
                    $"{draft.Title}: {texts[i].Text.Content} on {texts[k].Text.Content}"
                );
            }
        }
    }

    private static void EveryPotAndRunIsInThePlan(Plan plan, SheetDraft draft)
    {
        var ids = DemoRigs
            .Groups(draft.Elements)
            .Select(g => g.Id)
            .OfType<string>()
            .Order(StringComparer.Ordinal)
            .ToList();
        var pots = plan.Layout.Rows.SelectMany(r =>
            r.Pots.Select(p => string.Create(CultureInfo.InvariantCulture, $"pot-{r.Number}-{p.Number}"))
        );
        Assert.Equal(
            pots.Order(StringComparer.Ordinal),
            ids.Where(id => id.StartsWith("pot-", StringComparison.Ordinal))
        );
        Assert.Equal(
            plan.Layout.Runs.Select(r => "run-" + r.Label).Order(StringComparer.Ordinal),
            ids.Where(id => id.StartsWith("run-", StringComparison.Ordinal))
        );
    }

    private static void ScalesAreStandardAndFit(Plan plan, Paper paper)
    {
        foreach (
            var draft in PlanView
                .Draw(plan, paper)
                .Concat(FrontView.Draw(plan, paper))
                .Concat(EndView.Draw(plan, paper))
        )
        {
            Assert.Contains(draft.Scale!, Scales.Of(plan.Rig.Units));
            var room = SheetSet.Room(draft.Paper);
            var pots = DemoRigs
                .Groups(draft.Elements)
                .Where(g => g.Class?.StartsWith("pot", StringComparison.Ordinal) == true)
                .SelectMany(g => g.Children.OfType<Polyline>().SelectMany(p => p.Points));
            Assert.All(pots, point => Assert.True(room.Inset(-1).Holds(new Box(point.X, point.Y, 0, 0)), draft.Title));
        }
    }
}
