using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Tests.Screen;

/// <summary>Pages to look at, written where the environment asks for them.</summary>
public sealed class ScreenLooks
{
    private static readonly (string Name, double Plot, ScreenOptions Options)[] s_looks =
    [
        ("wide", 150, new()),
        ("flow", 150, new() { Colour = ScreenColour.Flow }),
        ("narrow", 100, ScreenOptions.Narrow),
        ("narrow-pressure", 100, ScreenOptions.Narrow with { Colour = ScreenColour.Pressure }),
    ];

    [Fact]
    public void Pages_to_look_at_are_written_where_the_environment_asks_for_them()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("DRIPWRIGHT_LOOKS") is { Length: > 0 }, "Nobody looks.");
        var folder = Environment.GetEnvironmentVariable("DRIPWRIGHT_LOOKS")!;
        foreach (var demo in BenchPlans.Demos)
        {
            var plan = BenchPlans.Demo(demo);
            foreach (var (name, width, options) in s_looks)
            {
                var views = Enum.GetValues<ScreenKind>().Select(kind => ScreenView.Of(plan, kind, options));
                var plots = ScreenPlot
                    .All(plan)
                    .Select(p =>
                        $"<h2>{p.Title}</h2><p>{p.Words(width)}</p><div style=\"max-width:700px\">{p.Svg(width)}</div>"
                    );
                Write(folder, $"{demo.Replace('/', '-')}-{name}", string.Concat(views));
                Write(folder, $"{demo.Replace('/', '-')}-{name}-plots", string.Concat(plots));
            }

            foreach (var plot in ScreenPlot.All(plan))
            {
                File.WriteAllBytes(Path.Combine(folder, $"{demo.Replace('/', '-')}-{plot.Key}.png"), plot.Png());
            }
        }
    }

    private static void Write(string folder, string name, string body) =>
        File.WriteAllText(
            Path.Combine(folder, name + ".html"),
            "<!doctype html><meta charset=utf-8><style>body{margin:8px;background:var(--sheet-paper);color:var(--sheet-ink);"
                + "font:16px Source Sans 3}svg{width:100%;height:auto;margin-bottom:16px}"
                + SvgStyles.FontFaces()
                + ScreenView.Styles()
                + "</style>"
                + body
        );
}
