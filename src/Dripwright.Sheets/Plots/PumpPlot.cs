using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language;
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
                Title = Words.Of("plot.pump.gravity"),
                Plots = [],
                Numbers =
                [
                    (Words.Of("plot.pump.number.static"), words.Head(feed.StaticHead)),
                    (Words.Of("plot.pump.number.flow"), words.Flow(feed.TotalFlow)),
                    (Words.Of("plot.pump.number.lowest"), words.Flow(feed.TotalFlowAtLowest)),
                ],
            };
    }

    private static RigPlot Curves(FeedPlan feed, OperatingPoint point, Wording words, PlotUnits units)
    {
        List<(double X, double Y)> Points(IReadOnlyList<CurvePoint> curve) =>
            [.. curve.Select(p => (units.Flow(p.Flow), units.Head(p.Head)))];
        var (pump, rig) = (Points(feed.PumpCurve), Points(feed.SystemCurve));
        var works = (X: units.Flow(point.Flow), Y: units.Head(point.Head));
        List<Series> series = [new(Words.Of("plot.pump.pump"), pump) { Pen = Pen.Built }];
        if (rig.Count > 1)
        {
            series.Add(
                new(Words.Of("plot.pump.rig"), rig) { Pen = new(DrawnRole.Water, LineWidth.Wide, LineType.Dashed) }
            );
        }

        series.Add(new(Words.Of("plot.pump.point"), [works], SeriesKind.Points) { Marker = Marker.Dot });
        // The rig's curve may climb far over the pump's: the plot ends a little over what the pump can do.
        var top = feed.PumpCurve.Max(p => p.Head) * 1.3;
        return new()
        {
            Key = "pump",
            Title = Words.Of("plot.pump.title"),
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
                            Words.Of("plot.pump.here")
                                + "\n"
                                + Words.Of("plot.pump.at", words.Flow(point.Flow), words.Head(point.Head)),
                            6,
                            -9
                        ),
                    ],
                },
            ],
            Numbers = Numbers(feed, point, words),
            Data = new(
                [
                    new("Flow", Words.Of("plot.column.flow"), units.FlowUnit),
                    new("Head of the pump", Words.Of("plot.column.head.pump"), units.HeadUnit),
                    new("Head that the rig needs", Words.Of("plot.column.head.rig"), units.HeadUnit),
                    new("Head at the operating point", Words.Of("plot.column.head.point"), units.HeadUnit),
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
            (Words.Of("plot.pump.number.through"), words.Flow(point.Flow)),
            (Words.Of("plot.pump.number.head"), words.Head(point.Head)),
            (Words.Of("plot.pump.number.emitters"), words.Flow(feed.TotalFlow)),
            (Words.Of("plot.pump.number.emitters.lowest"), words.Flow(feed.TotalFlowAtLowest)),
            .. feed.BypassFlow > 0 ? new[] { (Words.Of("plot.pump.number.bypass"), words.Flow(feed.BypassFlow)) } : [],
            (Words.Of("plot.pump.number.power"), $"{QuantityWords.Number(point.Power, "0")}\u00a0W"),
        ];
}
