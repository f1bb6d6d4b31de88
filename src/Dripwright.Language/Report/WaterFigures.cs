using Dripwright.Engine;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;

namespace Dripwright.Language.Report;

/// <summary>Key figures of pots, pump, drain and reservoir.</summary>
internal static class WaterFigures
{
    private const double WeightOfWater = 9806.65;

    public static KeyFigureGroup Pots(Plan plan, QuantityWords words)
    {
        var feed = plan.Feed;
        var pots = feed.Pots;
        var planted = pots.Where(pot => pot.Planted).ToList();
        List<KeyFigure> figures =
        [
            new(Words.Of("figures.pots.count"), QuantityWords.Count(pots.Count), Empty(pots.Count - planted.Count))
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
                new(Words.Of("figures.pots.water"), Words.Of("figures.not-found"), feed.Trouble) { Chief = true }
            );
            return new(FigureSubject.Pots, Words.Of("figures.pots"), figures);
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
                new(Words.Of("figures.pots.water"), Words.Of("figures.none"), Words.Of("figures.pots.dry"))
                {
                    Chief = true,
                }
            );
        }

        figures.AddRange(
            feed.Uniformity.Select(
                (measure, i) =>
                    new KeyFigure(
                        Words.Or($"figures.measure.{measure.Name}", SummaryWords.Large(measure.Name)),
                        QuantityWords.Percent(measure.Value),
                        Words.Or($"figures.class.{measure.Class}", EnumWords.Of(measure.Class))
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
                    Words.Of("figures.pots.weak"),
                    Chance(scatter.ChanceOfWeakPot),
                    Words.Of("figures.pots.weak.remark", QuantityWords.Count(scatter.Draws))
                )
            );
        }

        return new(FigureSubject.Pots, Words.Of("figures.pots"), figures);
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
                Words.Of("figures.gravity"),
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

        figures.Add(
            new(
                Words.Of("figures.pump.runs"),
                Words.Of("figures.pump.hours", QuantityWords.Number(point.HoursPerDay, "0.#")),
                Words.Of("figures.pump.power", words.Power(point.Power))
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
        return new(FigureSubject.Pump, Words.Of("figures.pump"), figures);
    }

    public static KeyFigureGroup Drain(Plan plan, QuantityWords words)
    {
        List<KeyFigure> figures = [];
        foreach (var (i, run) in plan.Drain.Runs.OrderByDescending(run => run.DeepestRatio).Take(3).Index())
        {
            var full = run.Pressurised
                ? Words.Of("figures.drain.full")
                : Words.Of("figures.drain.part-full", QuantityWords.Percent(run.DeepestRatio));
            var at = words.Length(run.DeepestStation);
            var remark =
                run.Margin > 0
                    ? Words.Of("figures.drain.spare", at, QuantityWords.Number(run.Margin, "0.#"))
                    : Words.Of("figures.drain.at", at);
            figures.Add(new(DrainName(run), full, remark) { Chief = i == 0 });
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

        if (plan.Drain.Trouble.Length > 0)
        {
            figures.Add(new(Words.Of("figures.not-found.name"), plan.Drain.Trouble));
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
            var where = over < 0 ? Words.Of("figures.drain.below") : Words.Of("figures.drain.over");
            figures.Add(new(Words.Of("figures.drain.outlet"), words.Length(Math.Abs(over)), where));
        }

        return new(FigureSubject.Drain, Words.Of("figures.drain"), figures);
    }

    public static KeyFigureGroup Reservoir(Plan plan, QuantityWords words)
    {
        var tank = plan.Reservoir;
        List<KeyFigure> figures =
        [
            new(
                Words.Of("figures.tank.usable"),
                words.Volume(tank.WorkingVolume),
                Words.Of("figures.tank.usable.remark", words.Volume(tank.RimVolume))
            ),
            new(
                Words.Of("figures.tank.back"),
                words.Volume(tank.BackInAll),
                tank.Overflow > 0
                    ? Words.Of("figures.tank.over", words.Volume(tank.Overflow), words.Volume(tank.Freeboard))
                    : Words.Of("figures.tank.fits", words.Volume(tank.Freeboard))
            )
            {
                Chief = true,
            },
        ];
        figures.Add(
            tank.Days is { } days
                ? new(
                    Words.Of("figures.tank.lasts"),
                    Words.Of("figures.tank.days", QuantityWords.Number(days, "0.#")),
                    SummaryWords.Several("figures.tank.plants", tank.Plants)
                )
                {
                    Chief = true,
                }
                : new(
                    Words.Of("figures.tank.lasts"),
                    Words.Of("figures.tank.for-ever"),
                    Words.Of("figures.tank.for-ever.remark")
                )
                {
                    Chief = true,
                }
        );
        figures.Add(
            new(Words.Of("figures.tank.weighs"), words.Mass(tank.WaterMass), Words.Of("figures.tank.weighs.remark"))
        );
        if (tank.SiphonsTo is { } level)
        {
            figures.Add(
                new(Words.Of("figures.tank.siphons"), words.Length(level), Words.Of("figures.tank.siphons.remark"))
            );
        }

        return new(FigureSubject.Reservoir, Words.Of("figures.tank"), figures);
    }

    // The greatest cause first: that is the one to do something about.
    private static KeyFigure Causes(SpreadShares causes)
    {
        var ordered = new[]
        {
            (Share: causes.Pressure, Key: "pressure"),
            (Share: causes.Height, Key: "height"),
            (Share: causes.Manufacture, Key: "making"),
            (Share: causes.Rest, Key: "rest"),
        }
            .OrderByDescending(cause => cause.Share)
            .ToList();
        var told = ordered
            .Where(cause => cause.Share >= 0.005)
            .Select(cause => Words.Of($"figures.causes.{cause.Key}", QuantityWords.Percent(cause.Share)))
            .ToList();
        return told.Count <= 1
            ? new(Words.Of("figures.causes"), Words.Of($"figures.causes.only.{ordered[0].Key}"))
            : new(
                Words.Of("figures.causes"),
                told[0],
                Words.Of("figures.causes.then", string.Join(", ", told.Skip(1)))
            );
    }

    private static string DrainName(DrainRunPlan run) =>
        run.Row == 0
            ? Words.Of("figures.drain.collector", run.Run)
            : Words.Of("figures.drain.row", QuantityWords.Count(run.Row), run.Run);

    private static string At(PotFlow pot, QuantityWords words) =>
        Words.Of(
            "figures.pots.at",
            QuantityWords.Count(pot.Row),
            QuantityWords.Count(pot.Pot),
            words.Pressure(pot.Pressure)
        );

    private static string Empty(int empty) =>
        empty == 0 ? Words.Of("figures.pots.planted") : Words.Of("figures.pots.empty", QuantityWords.Count(empty));

    private static string Shut(int shut) => shut == 0 ? "" : Words.Of("figures.pots.shut", QuantityWords.Count(shut));

    private static string Chance(double share) =>
        share switch
        {
            0 => Words.Of("figures.never"),
            < 0.001 => Words.Of("figures.rare"),
            _ => QuantityWords.Percent(share),
        };
}
