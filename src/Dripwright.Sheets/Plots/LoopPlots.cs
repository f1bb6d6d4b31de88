using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>How tank and pots drift over the next weeks.</summary>
internal static class LoopPlots
{
    private static readonly PlanWords s_words = new(UnitSystem.Metric);

    /// <summary>EC of all ways, the elements of one, sodium of all.</summary>
    public static IReadOnlyList<RigPlot> Of(NutrientPlan feed, NutrientOutlook outlook, int way)
    {
        List<LoopOutcome> ways = [.. outlook.All.Where(one => one.Evenings.Count > 1)];
        var followed = outlook.All[way];
        return ways.Count == 0 ? []
            : followed.Evenings.Count < 2 ? [Strength(outlook, ways), Sodium(outlook, ways)]
            : [Strength(outlook, ways), EachElement(feed, outlook, followed), Sodium(outlook, ways)];
    }

    private static RigPlot Strength(NutrientOutlook outlook, List<LoopOutcome> ways) =>
        Side(
            outlook,
            ways,
            new()
            {
                Key = "weeks-ec",
                Title = Words.Of("plot.weeks.ec.title"),
                Plots = [],
                Numbers = [],
            },
            (Words.Of("plot.weeks.ec.axis", "dS/m"), "dS/m"),
            evening => evening.ReservoirEc.DecisiemensPerMetre,
            null
        );

    private static RigPlot Sodium(NutrientOutlook outlook, List<LoopOutcome> ways)
    {
        var limit = Forms.ToMilligramsPerLitre(Constituent.Sodium, outlook.Limit.Classic);
        return Side(
            outlook,
            ways,
            new()
            {
                Key = "weeks-sodium",
                Title = Words.Of("plot.weeks.sodium.title"),
                Plots = [],
                Numbers = [(Words.Of("plot.weeks.number.tolerates"), $"{QuantityWords.Number(limit, "0")}\u00a0mg/L")],
            },
            (Words.Of("plot.weeks.sodium.axis", "mg/L"), "mg/L"),
            evening => Forms.ToMilligramsPerLitre(Constituent.Sodium, evening.State.Pots[Constituent.Sodium]),
            limit
        );
    }

    /// <summary>One number of every way, side by side.</summary>
    private static RigPlot Side(
        NutrientOutlook outlook,
        List<LoopOutcome> ways,
        RigPlot frame,
        (string Label, string Unit) axis,
        Func<LoopEvening, double> pick,
        double? limit
    )
    {
        List<Series> series =
        [
            .. ways.Select(way => new Series(
                Name(outlook, way),
                [.. way.Evenings.Select(evening => ((double)evening.Day, pick(evening)))]
            )),
        ];
        if (limit is { } most)
        {
            series.Add(
                new(Words.Of("plot.weeks.limit"), [(1, most), (ways.Max(way => way.Evenings[^1].Day), most)])
                {
                    Pen = new(DrawnRole.Stop, LineWidth.Narrow, LineType.LongDashDot),
                }
            );
        }

        return frame with
        {
            Plots = [new(Time(outlook), new Axis(axis.Label) { Low = 0 }) { Series = series, HasLegend = true }],
            Data = new(
                [
                    new("Day", Words.Of("plot.column.day"), ""),
                    .. ways.Select(way => new PlotColumn(Name(outlook, way), axis.Unit)),
                ],
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

    private static RigPlot EachElement(NutrientPlan feed, NutrientOutlook outlook, LoopOutcome way)
    {
        var fresh = feed.Recipe.Composition;
        List<Constituent> shown = [.. NutrientWords.Main.Where(one => fresh[one] > 0)];
        double Share(LoopEvening evening, Constituent one) => 100 * evening.State.Reservoir[one] / fresh[one];
        return new()
        {
            Key = "weeks-elements",
            Title = Words.Of("plot.weeks.elements.title", Name(outlook, way)),
            Words = (_, _) => Words.Of("plot.weeks.elements.words"),
            Plots =
            [
                new(Time(outlook), new Axis(Words.Of("plot.weeks.elements.axis")) { Low = 0 })
                {
                    HasLegend = true,
                    Series =
                    [
                        .. shown.Select(one => new Series(
                            Short(one),
                            [.. way.Evenings.Select(evening => ((double)evening.Day, Share(evening, one)))]
                        )),
                    ],
                },
            ],
            Numbers = [],
            Data = new(
                [
                    new("Day", Words.Of("plot.column.day"), ""),
                    .. NutrientWords.Followed.Select(one => new PlotColumn(Short(one), "mg/L")),
                ],
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

    // Neither name has a unit in it but the EC, which has one everywhere.
    private static string Name(NutrientOutlook outlook, LoopOutcome way) =>
        s_words.Of(NutrientWords.NameOf(outlook, way));

    private static string Short(Constituent constituent) => s_words.Of(Elements.Short(constituent));

    private static Axis Time(NutrientOutlook outlook) =>
        new(Words.Of("plot.axis.day")) { Low = 0, High = outlook.Days };
}
