using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using Dripwright.Engine;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Tests.Views;

namespace Dripwright.Sheets.Tests.Screen;

public sealed class ScreenViewTests
{
    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Views_of_every_demo_keep_the_laws(string demo) => Check(BenchPlans.Demo(demo));

    [Fact]
    public void Views_of_any_rig_keep_the_laws() => RigGen.Rigs.Holds(rig => Check(DemoRigs.Of(rig)), iter: 25);

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void Labels_of_pots_say_what_the_plan_says(UnitSystem units)
    {
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        var parts = Parts(Read(plan, ScreenKind.Plan, new() { Units = units }))
            .ToDictionary(p => (string)p.Attribute("data-part")!);
        foreach (var pot in plan.Feed.Pots)
        {
            var label = (string)
                parts[string.Create(CultureInfo.InvariantCulture, $"pot-{pot.Row}-{pot.Pot}")].Attribute("aria-label")!;
            Assert.StartsWith(
                string.Create(CultureInfo.InvariantCulture, $"Row {pot.Row}, pot {pot.Pot}, "),
                label,
                StringComparison.Ordinal
            );
            Assert.Contains(pot.Planted ? "planted " : "empty", label, StringComparison.Ordinal);
            var flow = pot.Flow > 0 ? QuantityText.Format(Dimension.Flow, pot.Flow, units) : "no water";
            Assert.EndsWith(", " + flow, label, StringComparison.Ordinal);
        }

        Assert.Equal("Row 1, pot 3, planted tomato, ", ((string)parts["pot-1-3"].Attribute("aria-label")!)[..30]);
    }

    [Fact]
    public void Other_units_change_figures_and_nothing_that_is_drawn()
    {
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        var narrow = ScreenOptions.Narrow with { Legend = false, Colour = ScreenColour.Flow };
        foreach (var kind in Enum.GetValues<ScreenKind>())
        {
            var (metric, us) = (Read(plan, kind, narrow), Read(plan, kind, narrow with { Units = UnitSystem.Us }));
            Assert.Equal(
                Parts(metric).Select(p => (string)p.Attribute("data-part")!),
                Parts(us).Select(p => (string)p.Attribute("data-part")!)
            );
            Assert.Equal(Shapes(metric), Shapes(us));
        }

        Assert.Equal(UnitSystem.Metric, plan.Rig.Units);
        Assert.Same(plan, plan.In(null));
        Assert.Same(plan, plan.In(UnitSystem.Metric));

        static IEnumerable<string> Shapes(XElement root) =>
            root.Descendants().Where(e => e.Name.LocalName is "rect" or "circle" or "line").Select(e => e.ToString());
    }

    [Fact]
    public void Drawn_twice_and_in_another_culture_a_view_is_the_same()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var before = CultureInfo.CurrentCulture;
        var first = Written();
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, Written());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        string Written() =>
            ScreenView.Styles()
            + string.Concat(
                Enum.GetValues<ScreenKind>()
                    .Select(k => ScreenView.Of(plan, k, new() { Colour = ScreenColour.Pressure }))
            );
    }

    [Fact]
    public void Three_views_stand_on_one_page_without_sharing_an_id()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var ids = Enum.GetValues<ScreenKind>().SelectMany(kind => Ids(Read(plan, kind))).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.Contains("front-pump", ids);
        Assert.All(
            Ids(Read(plan, ScreenKind.Plan, new() { IdPrefix = "x-" })),
            id => Assert.StartsWith("x-", id, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Five_thousand_pots_stay_small_and_one_pot_too()
    {
        var plan = BenchPlans.Of(
            """{ "rows": [{ "count": 50, "pots": 100, "spacing": "30 cm" }], "site": { "roomLength": "40 m", "roomWidth": "80 m" } }"""
        );
        foreach (var colour in Enum.GetValues<ScreenColour>())
        {
            var svg = ScreenView.Of(plan, ScreenKind.Plan, new() { Colour = colour });
            var parts = Parts(XDocument.Parse(svg).Root!);
            Assert.Equal(5000, parts.Count(p => p.Attribute("data-pot") is not null));
            Assert.InRange(Encoding.UTF8.GetByteCount(svg), 500_000, 2_200_000);
            Assert.InRange(Packed(svg), 10_000, 250_000);
            Assert.InRange(parts.Count(p => (string)p.Attribute("tabindex")! == "0"), 50, 60);
            TestContext.Current.TestOutputHelper?.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{colour}: {svg.Length} characters, {Packed(svg)} bytes packed"
                )
            );
        }

        var one = ScreenView.Of(BenchPlans.Demo("awkward/one-pot"), ScreenKind.Plan);
        Assert.InRange(one.Length, 2_000, 20_000);

        static long Packed(string svg)
        {
            using var memory = new MemoryStream();
            using (
                var zip = new System.IO.Compression.GZipStream(
                    memory,
                    System.IO.Compression.CompressionLevel.Fastest,
                    true
                )
            )
            {
                zip.Write(Encoding.UTF8.GetBytes(svg));
            }

            return memory.Length;
        }
    }

    [Fact]
    public void A_size_or_a_row_that_cannot_be_drawn_is_refused()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        Assert.Throws<ArgumentOutOfRangeException>(() => ScreenView.Of(plan, ScreenKind.Front, new() { Row = 2 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScreenView.Of(plan, ScreenKind.Plan, new() { Width = 20 }));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ScreenView.Of(plan, ScreenKind.Plan, new() { Height = double.NaN })
        );
    }

    internal static XElement Read(Plan plan, ScreenKind kind, ScreenOptions? options = null) =>
        XDocument.Parse(ScreenView.Of(plan, kind, options)).Root!;

    internal static List<XElement> Parts(XElement root) =>
        [.. root.Descendants().Where(e => e.Attribute("data-part") is not null)];

    private static List<string> Ids(XElement root) =>
        [.. root.Descendants().Select(e => (string?)e.Attribute("id")).OfType<string>()];

    private static void Check(Plan plan)
    {
        var labels = ScreenView.Parts(plan).ToDictionary(p => p.Part, p => p.Label);
        foreach (var kind in Enum.GetValues<ScreenKind>())
        {
            foreach (
                var options in new[] { new ScreenOptions(), ScreenOptions.Narrow with { Colour = ScreenColour.Flow } }
            )
            {
                var root = Read(plan, kind, options);
                var ids = Ids(root);
                Assert.Equal(ids.Count, ids.Distinct().Count());
                var parts = Parts(root);
                Assert.All(parts, part => Named(part, kind, labels));
                var drawn = parts.Select(p => (string)p.Attribute("data-part")!).Order(StringComparer.Ordinal).ToList();
                if (kind == ScreenKind.Plan)
                {
                    Assert.Equal(labels.Keys.Order(StringComparer.Ordinal), drawn);
                }
                else if (kind == ScreenKind.Front)
                {
                    Assert.Equal(
                        labels
                            .Keys.Where(p => p.StartsWith("pot-1-", StringComparison.Ordinal))
                            .Order(StringComparer.Ordinal),
                        drawn.Where(p => p.StartsWith("pot-", StringComparison.Ordinal))
                    );
                }

                var box = ((string)root.Attribute("viewBox")!)
                    .Split(' ')
                    .Select(n => double.Parse(n, CultureInfo.InvariantCulture))
                    .ToList();
                Assert.InRange(box[2], options.Width - 0.01, options.Width * 1.25);
                Assert.DoesNotContain("<style", root.ToString(), StringComparison.Ordinal);
            }
        }
    }

    private static void Named(XElement part, ScreenKind kind, Dictionary<string, string> labels)
    {
        var name = (string)part.Attribute("data-part")!;
        Assert.Equal(kind.ToString().ToLowerInvariant() + "-" + name, (string?)part.Attribute("id"));
        Assert.Equal(labels[name], (string?)part.Attribute("aria-label"));
        Assert.Equal("button", (string?)part.Attribute("role"));
        Assert.NotNull(part.Attribute("tabindex"));
        Assert.DoesNotContain(part.Descendants(), e => e.Attribute("data-part") is not null);
    }
}
