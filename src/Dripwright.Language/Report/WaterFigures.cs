using Dripwright.Engine;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;

namespace Dripwright.Language.Report;

/// <summary>Key figures of pots, pump, drain and reservoir.</summary>
internal static class WaterFigures
{
    private const double WeightOfWater = 9806.65;

    // A cause of less than half a per cent would read as 0 %.
    private const double LeastCause = 0.005;

    public static KeyFigureGroup Pots(Plan plan, PlanWords told)
    {
        var words = told.Quantities;
        var feed = plan.Feed;
        var pots = feed.Pots;
        var planted = pots.Where(pot => pot.Planted).ToList();
        List<KeyFigure> figures =
        [
            new(Words.Of("figures.pots"), QuantityWords.Count(pots.Count), Empty(pots.Count - planted.Count))
            {
                Chief = true,
            },
            new(
                Words.Of("figures.pots.emitters"),
                QuantityWords.Count(feed.Emitters.Count),
                Shut(feed.Emitters.Count(e => e.Open <= 0))
            ),
        ];
        if (!feed.Solved)
        {
            figures.Add(
                new(Words.Of("figures.pots.water"), Words.Of("figures.pots.water.unsolved"), told.Of(feed.Trouble))
                {
                    Chief = true,
                }
            );
            return new(FigureSubject.Pots, Words.Of("figures.pots.heading"), figures);
        }

        if (plan.Dose.Thirstiest is { } pot)
        {
            figures.Insert(0, Dose(pot, words));
        }

        if (feed.Weakest is { } weakest && feed.Strongest is { } strongest)
        {
            figures.Add(
                new(Words.Of("figures.pots.least"), words.Flow(weakest.Flow), At(weakest, words)) { Chief = true }
            );
            figures.Add(
                new(
                    Words.Of("figures.pots.mean"),
                    words.Flow(planted.Average(pot => pot.Flow)),
                    Words.Of("figures.pots.mean.remark")
                )
            );
            figures.Add(
                new(Words.Of("figures.pots.most"), words.Flow(strongest.Flow), At(strongest, words)) { Chief = true }
            );
        }
        else
        {
            figures.Add(
                new(Words.Of("figures.pots.water"), Words.Of("figures.pots.none"), Words.Of("figures.pots.none.remark"))
                {
                    Chief = true,
                }
            );
        }

        figures.AddRange(
            feed.Uniformity.Select(
                (measure, i) =>
                    new KeyFigure(
                        SummaryWords.Large(told.Of(measure.Name)),
                        QuantityWords.Percent(measure.Value),
                        told.Of(measure.ClassName)
                    )
                    {
                        Chief = i == 0,
                    }
            )
        );
        if (feed.Causes is { CoefficientOfVariation: > 0 } causes)
        {
            figures.Add(Causes(causes));
        }

        if (feed.Scatter is { } scatter)
        {
            figures.Add(
                new(
                    Words.Of("figures.pots.scatter"),
                    Chance(scatter.ChanceOfWeakPot),
                    Words.Of("figures.pots.scatter.remark", scatter.Draws, QuantityWords.Percent(plan.Rig.Feed.Clogged))
                )
            );
        }

        return new(FigureSubject.Pots, Words.Of("figures.pots.heading"), figures);
    }

    /// <summary>The first thing a grower asks: what a plant gets, beside what it drinks.</summary>
    private static KeyFigure Dose(PotDose pot, QuantityWords words) =>
        new(
            Words.Of("figures.dose"),
            Words.Of("figures.dose.value", words.Volume(pot.Given / pot.Plants)),
            Words.Of(
                "figures.dose.remark",
                pot.Row,
                pot.Pot,
                words.Volume(pot.HotDay / pot.Plants),
                QuantityWords.Percent(pot.DrainShare)
            )
        )
        {
            Chief = true,
        };

    public static KeyFigureGroup Pump(Plan plan, QuantityWords words)
    {
        var feed = plan.Feed;
        if (feed.OperatingPoint is not { } point)
        {
            return new(
                FigureSubject.Pump,
                Words.Of("figures.gravity.heading"),
                [
                    new(
                        Words.Of("figures.gravity.head"),
                        words.Head(feed.StaticHead),
                        words.Pressure(feed.StaticHead * WeightOfWater)
                    )
                    {
                        Chief = true,
                    },
                    new(Words.Of("figures.gravity.flow"), words.Flow(feed.TotalFlow)),
                ]
            );
        }

        List<KeyFigure> figures =
        [
            new(
                Words.Of("figures.pump.point"),
                words.Flow(point.Flow),
                Words.Of(
                    "figures.pump.point.remark",
                    words.Head(point.Head),
                    words.Pressure(point.Head * WeightOfWater)
                )
            )
            {
                Chief = true,
            },
        ];
        if (feed.BypassFlow > 0)
        {
            figures.Add(new(Words.Of("figures.pump.bypass"), words.Flow(feed.BypassFlow)));
        }

        if (feed.BreakHole is { } hole)
        {
            figures.Add(
                new(Words.Of("figures.pump.hole"), words.Flow(hole.Flow), Words.Of("figures.pump.hole.remark"))
            );
        }

        figures.AddRange(feed.Worn.Select(worn => Worn(plan, worn, words)));

        figures.Add(
            new(
                Words.Of("figures.pump.runs"),
                Words.Of("figures.pump.runs.value", QuantityWords.Number(point.HoursPerDay, "0.#")),
                Words.Of("figures.pump.runs.remark", words.Power(point.Power))
            )
        );
        figures.Add(
            new(
                Words.Of("figures.pump.energy"),
                Words.Of("figures.pump.energy.value", QuantityWords.Number(point.EnergyPerDayKilowattHours, "0.###"))
            )
            {
                Chief = true,
            }
        );
        return new(FigureSubject.Pump, Words.Of("figures.pump.heading"), figures);
    }

    /// <summary>Whether every pot still gets enough when pump or strainer are not new any more.</summary>
    private static KeyFigure Worn(Plan plan, WornFeed worn, QuantityWords words)
    {
        var lacking = WearRules.Lacking(plan.Feed, plan.Dose, worn).Count;
        var least = plan
            .Feed.Pots.Zip(worn.Pots)
            .Where(p => p.First.Planted)
            .Select(p => p.Second)
            .DefaultIfEmpty(0)
            .Min();
        return new(
            Words.Of($"figures.pump.worn.{worn.Kind}"),
            least <= 0 ? Words.Of("figures.pump.worn.dry")
                : lacking > 0 ? Words.Of("figures.pump.worn.short", lacking)
                : Words.Of("figures.pump.worn.still"),
            Words.Of("figures.pump.worn.remark", words.Flow(least))
        );
    }

    public static KeyFigureGroup Drain(Plan plan, PlanWords told)
    {
        var words = told.Quantities;
        List<KeyFigure> figures = [];
        foreach (var (i, run) in plan.Drain.Runs.OrderByDescending(run => run.DeepestRatio).Take(3).Index())
        {
            var full = run.Pressurised
                ? Words.Of("figures.drain.runs-full")
                : Words.Of("figures.drain.full", QuantityWords.Percent(run.DeepestRatio));
            var at = words.Length(run.DeepestStation);
            var where =
                run.Margin > 0
                    ? Words.Of("figures.drain.spare", at, QuantityWords.Number(run.Margin, "0.#"))
                    : Words.Of("figures.drain.at", at);
            figures.Add(new(DrainName(run, told), full, where) { Chief = i == 0 });
        }

        if (plan.Drain.Runs.Count > 3)
        {
            figures.Add(
                new(
                    Words.Of("figures.drain.others"),
                    QuantityWords.Count(plan.Drain.Runs.Count - 3),
                    Words.Of("figures.drain.others.remark")
                )
            );
        }

        figures.Add(
            new(
                Words.Of("figures.drain.slope"),
                words.Length(plan.Drain.SlopeDrop),
                Words.Of("figures.drain.slope.remark")
            )
        );
        if (plan.Rig.Drain.Into == DrainTarget.Reservoir)
        {
            var over = plan.Drain.MouthOverRim;
            var where = over < 0 ? Words.Of("figures.drain.outlet.below") : Words.Of("figures.drain.outlet.over");
            figures.Add(new(Words.Of("figures.drain.outlet"), words.Length(Math.Abs(over)), where));
        }

        return new(FigureSubject.Drain, Words.Of("figures.drain.heading"), figures);
    }

    public static KeyFigureGroup Reservoir(Plan plan, PlanWords told)
    {
        var words = told.Quantities;
        var tank = plan.Reservoir;
        List<KeyFigure> figures =
        [
            new(
                Words.Of("figures.reservoir.usable"),
                words.Volume(tank.WorkingVolume),
                Words.Of("figures.reservoir.usable.remark", words.Volume(tank.RimVolume))
            ),
            new(
                Words.Of("figures.reservoir.back"),
                words.Volume(tank.BackInAll),
                tank.Overflow > 0
                    ? Words.Of("figures.reservoir.back.over", words.Volume(tank.Overflow), words.Volume(tank.Freeboard))
                    : Words.Of("figures.reservoir.back.fits", words.Volume(tank.Freeboard))
            )
            {
                Chief = true,
            },
        ];
        figures.Add(
            tank.Days is { } days
                ? new(
                    Words.Of("figures.reservoir.lasts"),
                    told.Of(Measured.Days(days * 86_400)),
                    Words.Count("figures.reservoir.lasts.plants", tank.Plants)
                )
                {
                    Chief = true,
                }
                : new(
                    Words.Of("figures.reservoir.lasts"),
                    Words.Of("figures.reservoir.lasts.ever"),
                    Words.Of("figures.reservoir.lasts.ever.remark")
                )
                {
                    Chief = true,
                }
        );
        figures.Add(
            new(
                Words.Of("figures.reservoir.weight"),
                words.Mass(tank.WaterMass),
                Words.Of("figures.reservoir.weight.remark")
            )
        );
        if (tank.SiphonsTo is { } level)
        {
            figures.Add(
                new(
                    Words.Of("figures.reservoir.siphon"),
                    words.Length(level),
                    Words.Of("figures.reservoir.siphon.remark")
                )
            );
        }

        return new(FigureSubject.Reservoir, Words.Of("figures.reservoir.heading"), figures);
    }

    // The greatest cause first: that is the one to do something about.
    private static KeyFigure Causes(SpreadShares causes)
    {
        // Shares of causes that work against each other say nothing: -1103 % is no part of anything.
        if (new[] { causes.Pressure, causes.Height, causes.Manufacture, causes.Rest }.Any(s => Math.Abs(s) > 1.05))
        {
            return new(
                Words.Of("figures.pots.causes"),
                Words.Of("figures.pots.causes.offset"),
                Words.Of("figures.pots.causes.offset.remark")
            );
        }

        var told = new[]
        {
            (Share: causes.Pressure, Name: Words.Of("figures.pots.cause.pressure")),
            (Share: causes.Height, Name: Words.Of("figures.pots.cause.height")),
            (Share: causes.Manufacture, Name: Words.Of("figures.pots.cause.emitters")),
            (Share: causes.Rest, Name: Words.Of("figures.pots.cause.rest")),
        }
            .Where(cause => cause.Share >= LeastCause)
            .OrderByDescending(cause => cause.Share)
            .Select(cause => $"{QuantityWords.Percent(cause.Share)} {cause.Name}")
            .ToList();
        return new(
            Words.Of("figures.pots.causes"),
            told[0],
            told.Count > 1 ? Words.Of("figures.pots.causes.then", string.Join(", ", told.Skip(1))) : ""
        );
    }

    private static string DrainName(DrainRunPlan run, PlanWords told) =>
        run.Row == 0
            ? Words.Of("figures.drain.collector", told.Of(run.Name))
            : Words.Of("figures.drain.row", run.Row, told.Of(run.Name));

    private static string At(PotFlow pot, QuantityWords words) =>
        Words.Of("figures.pots.at", pot.Row, pot.Pot, words.Pressure(pot.Pressure));

    private static string Empty(int empty) =>
        empty == 0 ? Words.Of("figures.pots.planted") : Words.Of("figures.pots.empty", empty);

    private static string Shut(int shut) => shut == 0 ? "" : Words.Of("figures.pots.shut", shut);

    private static string Chance(double share) =>
        share switch
        {
            0 => Words.Of("figures.pots.scatter.never"),
            < 0.001 => Words.Of("figures.pots.scatter.seldom", "0.1 %"),
            _ => QuantityWords.Percent(share),
        };
}
