using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>How tank and pots drift over the next weeks.</summary>
internal static class LoopPlots
{
    /// <summary>EC of all ways, the elements of one, sodium of all.</summary>
    public static IReadOnlyList<RigPlot> Of(NutrientPlan feed, NutrientOutlook outlook, int way)
    {
        List<LoopOutcome> ways = [.. outlook.All.Where(one => one.Evenings.Count > 1)];
        LoopOutcome followed = outlook.All[way];
        return ways.Count == 0 ? []
            : followed.Evenings.Count < 2 ? [Strength(outlook, ways), Sodium(outlook, ways)]
            : [Strength(outlook, ways), Elements(feed, outlook, followed), Sodium(outlook, ways)];
    }

    private static RigPlot Strength(NutrientOutlook outlook, List<LoopOutcome> ways) =>
        Side(
            outlook,
            ways,
            new()
            {
                Key = "weeks-ec",
                Title = "Strength of the tank",
                Plots = [],
                Numbers = [],
            },
            "EC of the tank, dS/m",
            evening => evening.ReservoirEc.DecisiemensPerMetre,
            null
        );

    private static RigPlot Sodium(NutrientOutlook outlook, List<LoopOutcome> ways)
    {
        double limit = Forms.ToMilligramsPerLitre(Constituent.Sodium, outlook.Limit.Classic);
        return Side(
            outlook,
            ways,
            new()
            {
                Key = "weeks-sodium",
                Title = "Sodium in the pots",
                Plots = [],
                Numbers = [("What the crop stands", $"{QuantityWords.Number(limit, "0")}\u00a0mg/L")],
            },
            "Sodium in the pots, mg/L",
            evening => Forms.ToMilligramsPerLitre(Constituent.Sodium, evening.State.Pots[Constituent.Sodium]),
            limit
        );
    }

    /// <summary>One number of every way, side by side.</summary>
    private static RigPlot Side(
        NutrientOutlook outlook,
        List<LoopOutcome> ways,
        RigPlot frame,
        string axis,
        Func<LoopEvening, double> pick,
        double? limit
    )
    {
        List<Series> series =
        [
            .. ways.Select(way => new Series(
                NutrientWords.NameOf(outlook, way),
                [.. way.Evenings.Select(evening => ((double)evening.Day, pick(evening)))]
            )),
        ];
        if (limit is { } most)
        {
            series.Add(
                new("the crop's limit", [(1, most), (ways.Max(way => way.Evenings[^1].Day), most)])
                {
                    Pen = new(Role.Stop, LineWidth.Narrow, LineType.LongDashDot),
                }
            );
        }

        return frame with
        {
            Plots = [new(Time(outlook), new Axis(axis) { Low = 0 }) { Series = series, HasLegend = true }],
            Data = new(
                [new("Day", ""), .. ways.Select(way => new PlotColumn(NutrientWords.NameOf(outlook, way), Unit(axis)))],
                [
                    .. Enumerable
                        .Range(0, ways.Max(way => way.Evenings.Count))
                        .Select(i =>
                            (IReadOnlyList<double?>)
                                [
                                    i + 1,
                                    .. ways.Select(way =>
                                        i < way.Evenings.Count ? pick(way.Evenings[i]) : (double?)null
                                    ),
                                ]
                        ),
                ]
            ),
        };
    }

    private static RigPlot Elements(NutrientPlan feed, NutrientOutlook outlook, LoopOutcome way)
    {
        Composition fresh = feed.Recipe.Composition;
        List<Constituent> shown = [.. NutrientWords.Main.Where(one => fresh[one] > 0)];
        double Share(LoopEvening evening, Constituent one) => 100 * evening.State.Reservoir[one] / fresh[one];
        return new()
        {
            Key = "weeks-elements",
            Title = $"Each element in the tank: {NutrientWords.NameOf(outlook, way)}",
            Words = (_, _) => "A fresh feed is 100 %. The EC sees only the sum of them all.",
            Plots =
            [
                new(Time(outlook), new Axis("Of a fresh feed, %") { Low = 0 })
                {
                    HasLegend = true,
                    Series =
                    [
                        .. shown.Select(one => new Series(
                            Forms.ShortName(one),
                            [.. way.Evenings.Select(evening => ((double)evening.Day, Share(evening, one)))]
                        )),
                    ],
                },
            ],
            Numbers = [],
            Data = new(
                [new("Day", ""), .. NutrientWords.Followed.Select(one => new PlotColumn(Forms.ShortName(one), "mg/L"))],
                [
                    .. way.Evenings.Select(evening =>
                        (IReadOnlyList<double?>)
                            [
                                evening.Day,
                                .. NutrientWords.Followed.Select(one =>
                                    (double?)Forms.ToMilligramsPerLitre(one, evening.State.Reservoir[one])
                                ),
                            ]
                    ),
                ]
            ),
        };
    }

    private static Axis Time(NutrientOutlook outlook) => new("Day") { Low = 0, High = outlook.Days };

    private static string Unit(string axis) => axis[(axis.LastIndexOf(' ') + 1)..];
}
