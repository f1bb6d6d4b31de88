using System.Xml.Linq;
using Dripwright.Engine;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;

namespace Dripwright.Sheets.Tests.Screen;

public sealed class ScreenViewTests
{
    public static TheoryData<string, ScreenKind> Views =>
        [
            .. BenchPlans.Demos.SelectMany(demo =>
                Enum.GetValues<ScreenKind>().Select(kind => new TheoryDataRow<string, ScreenKind>(demo, kind))
            ),
        ];

    [Theory]
    [MemberData(nameof(Views))]
    public void A_view_is_valid_its_ids_are_unique_and_every_part_has_a_name(string demo, ScreenKind kind)
    {
        var plan = BenchPlans.Demo(demo);
        var labels = ScreenView.Parts(plan).ToDictionary(p => p.Part, p => p.Label);
        foreach (var colour in Enum.GetValues<ScreenColour>())
        {
            var root = Read(plan, kind, new() { Colour = colour });
            var ids = root.Descendants().Select(e => (string?)e.Attribute("id")).OfType<string>().ToList();
            Assert.Equal(ids.Count, ids.Distinct().Count());
            var parts = Parts(root);
            Assert.NotEmpty(parts);
            Assert.All(
                parts,
                part =>
                {
                    var name = (string)part.Attribute("data-part")!;
                    Assert.Equal(kind.ToString().ToLowerInvariant() + "-" + name, (string?)part.Attribute("id"));
                    Assert.Equal(labels[name], (string?)part.Attribute("aria-label"));
                    Assert.Equal("button", (string?)part.Attribute("role"));
                    Assert.NotNull(part.Attribute("tabindex"));
                }
            );
        }
    }

    [Theory]
    [MemberData(nameof(BenchViews))]
    public void From_above_every_part_is_there_once(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var drawn = Parts(Read(plan, ScreenKind.Plan)).Select(p => (string)p.Attribute("data-part")!);
        Assert.Equal(
            ScreenView.Parts(plan).Select(p => p.Part).Order(StringComparer.Ordinal),
            drawn.Order(StringComparer.Ordinal)
        );
    }

    public static TheoryData<string> BenchViews => [.. BenchPlans.Demos];

    internal static XElement Read(Plan plan, ScreenKind kind, ScreenOptions? options = null) =>
        XDocument.Parse(ScreenView.Of(plan, kind, options)).Root!;

    internal static List<XElement> Parts(XElement root) =>
        [.. root.Descendants().Where(e => e.Attribute("data-part") is not null)];

    /// <summary>Writes pages to look at into the folder that the environment names.</summary>
    [Fact]
    public void Pictures_to_look_at_are_written_where_the_environment_asks_for_them()
    {
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is not { Length: > 0 } folder)
        {
            return;
        }

        foreach (var demo in BenchPlans.Demos)
        {
            var plan = BenchPlans.Demo(demo);
            foreach (var (name, options) in Looks)
            {
                var views = Enum.GetValues<ScreenKind>()
                    .Select(kind => "<figure>" + ScreenView.Of(plan, kind, options) + "</figure>");
                var page =
                    "<!doctype html><meta charset=utf-8><style>body{margin:8px;background:var(--sheet-paper)}figure{margin:0 0 16px}svg{width:100%;height:auto}"
                    + Dripwright.Sheets.Writing.SvgStyles.FontFaces()
                    + ScreenView.Styles()
                    + "</style>"
                    + string.Concat(views);
                File.WriteAllText(Path.Combine(folder, $"{demo.Replace('/', '-')}-{name}.html"), page);
            }
        }
    }

    private static readonly (string Name, ScreenOptions Options)[] Looks =
    [
        ("wide", new()),
        ("flow", new() { Colour = ScreenColour.Flow }),
        ("narrow", ScreenOptions.Narrow),
        ("narrow-pressure", ScreenOptions.Narrow with { Colour = ScreenColour.Pressure }),
    ];
}
