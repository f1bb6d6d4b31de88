using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>The pump's curve, the rig's, and where they meet.</summary>
internal static class PumpPlot
{
    public static RigPlot Of(Plan plan, Wording words, PlotUnits units)
    {
        var feed = plan.Feed;
        return feed.OperatingPoint is { } point && feed.PumpCurve.Count > 1
            ? Curves(feed, point, words, units)
            : new()
            {
                Key = "gravity",
                Title = "Gravity feed",
                Plots = [],
                Numbers =
                [
                    ("Water over the mean emitter", words.Head(feed.StaticHead)),
                    ("Flow in all", words.Flow(feed.TotalFlow)),
                    ("Flow in all at the lowest level", words.Flow(feed.TotalFlowAtLowest)),
                ],
            };
    }

    private static RigPlot Curves(FeedPlan feed, OperatingPoint point, Wording words, PlotUnits units)
    {
        List<(double X, double Y)> Points(IReadOnlyList<CurvePoint> curve) =>
            [.. curve.Select(p => (units.Flow(p.Flow), units.Head(p.Head)))];
        var (pump, rig) = (Points(feed.PumpCurve), Points(feed.SystemCurve));
        var works = (X: units.Flow(point.Flow), Y: units.Head(point.Head));
        List<Series> series = [new("pump", pump) { Pen = Pen.Built }];
        if (rig.Count > 1)
        {
            series.Add(new("rig: what it asks for", rig) { Pen = new(Role.Water, LineWidth.Wide, LineType.Dashed) });
        }

        series.Add(new("working point", [works], SeriesKind.Points) { Marker = Marker.Dot });
        // The rig's curve may climb far over the pump's: the plot ends a little over what the pump can do.
        var top = feed.PumpCurve.Max(p => p.Head) * 1.3;
        return new()
        {
            Key = "pump",
            Title = "Pump and rig",
            Plots =
            [
                new(units.FlowAxis with { Low = 0 }, units.HeadAxis with { Low = 0, High = units.Head(top) })
                {
                    Series = series,
                    HasLegend = true,
                    Notes =
                    [
                        new PlotNote(
                            works.X,
                            works.Y,
                            $"works here:\n{words.Flow(point.Flow)} at {words.Head(point.Head)}",
                            6,
                            -9
                        ),
                    ],
                },
            ],
            Numbers = Numbers(feed, point, words),
            Data = new(
                [
                    new("Flow", units.FlowUnit),
                    new("Head of the pump", units.HeadUnit),
                    new("Head that the rig asks for", units.HeadUnit),
                    new("Head at the working point", units.HeadUnit),
                ],
                [
                    .. pump.Select(p => new double?[] { p.X, p.Y, null, null }),
                    .. rig.Select(p => new double?[] { p.X, null, p.Y, null }),
                    [works.X, null, null, works.Y],
                ]
            ),
        };
    }

    private static List<(string, string)> Numbers(FeedPlan feed, OperatingPoint point, Wording words) =>
        [
            ("Flow through the pump", words.Flow(point.Flow)),
            ("Head it gives", words.Head(point.Head)),
            ("Out of the emitters", words.Flow(feed.TotalFlow)),
            ("Out of the emitters at the lowest level", words.Flow(feed.TotalFlowAtLowest)),
            .. feed.BypassFlow > 0 ? new[] { ("Back through the bypass", words.Flow(feed.BypassFlow)) } : [],
            ("Power it takes", $"{QuantityWords.Number(point.Power, "0")}\u00a0W"),
        ];
}
