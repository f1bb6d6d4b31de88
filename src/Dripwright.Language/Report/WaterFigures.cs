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
            new("Pots", QuantityWords.Count(pots.Count), Empty(pots.Count - planted.Count)) { Chief = true },
            new("Emitters", QuantityWords.Count(feed.Emitters.Count), Shut(feed.Emitters.Count(e => e.Open <= 0))),
        ];
        if (!feed.Solved)
        {
            figures.Add(new("Water per pot", "not found", feed.Trouble) { Chief = true });
            return new(FigureSubject.Pots, "Pots and their water", figures);
        }

        if (plan.Dose.Thirstiest is { } pot)
        {
            figures.Insert(0, Dose(pot, words));
        }

        if (feed.Weakest is { } weakest && feed.Strongest is { } strongest)
        {
            figures.Add(new("Least water", words.Flow(weakest.Flow), At(weakest, words)) { Chief = true });
            figures.Add(new("Mean", words.Flow(planted.Average(pot => pot.Flow)), "of the planted pots"));
            figures.Add(new("Most water", words.Flow(strongest.Flow), At(strongest, words)) { Chief = true });
        }
        else
        {
            figures.Add(new("Water per pot", "none", "no planted pot gets any water") { Chief = true });
        }

        figures.AddRange(
            feed.Uniformity.Select(
                (measure, i) =>
                    new KeyFigure(
                        SummaryWords.Large(measure.Name),
                        QuantityWords.Percent(measure.Value),
                        EnumWords.Of(measure.Class)
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
                    "Weakest under 80 %",
                    Chance(scatter.ChanceOfWeakPot),
                    $"of {QuantityWords.Count(scatter.Draws)} drawn rigs with uneven and partly clogged emitters"
                )
            );
        }

        return new(FigureSubject.Pots, "Pots and their water", figures);
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
                "Gravity feed",
                [
                    new(
                        "Water over emitters",
                        words.Head(feed.StaticHead),
                        words.Pressure(feed.StaticHead * WeightOfWater)
                    )
                    {
                        Chief = true,
                    },
                    new("Flow in all", words.Flow(feed.TotalFlow)),
                ]
            );
        }

        List<KeyFigure> figures =
        [
            new(
                "Works at",
                words.Flow(point.Flow),
                $"with {words.Head(point.Head)} of head ({words.Pressure(point.Head * WeightOfWater)})"
            )
            {
                Chief = true,
            },
        ];
        if (feed.BypassFlow > 0)
        {
            figures.Add(new("Through the bypass", words.Flow(feed.BypassFlow)));
        }

        figures.Add(
            new(
                "Runs",
                $"{QuantityWords.Number(point.HoursPerDay, "0.#")} h a day",
                $"drawing {words.Power(point.Power)}"
            )
        );
        figures.Add(
            new("Energy", $"{QuantityWords.Number(point.EnergyPerDayKilowattHours, "0.###")} kWh a day")
            {
                Chief = true,
            }
        );
        return new(FigureSubject.Pump, "Pump", figures);
    }

    public static KeyFigureGroup Drain(Plan plan, QuantityWords words)
    {
        List<KeyFigure> figures = [];
        foreach (var (i, run) in plan.Drain.Runs.OrderByDescending(run => run.DeepestRatio).Take(3).Index())
        {
            var full = run.Pressurised ? "runs full" : $"{QuantityWords.Percent(run.DeepestRatio)} full";
            var spare = run.Margin > 0 ? $", could take {QuantityWords.Number(run.Margin, "0.#")} times the flow" : "";
            figures.Add(new(DrainName(run), full, $"at {words.Length(run.DeepestStation)}{spare}") { Chief = i == 0 });
        }

        if (plan.Drain.Runs.Count > 3)
        {
            figures.Add(new("Other runs", QuantityWords.Count(plan.Drain.Runs.Count - 3), "less full than these"));
        }

        if (plan.Drain.Trouble.Length > 0)
        {
            figures.Add(new("Not found", plan.Drain.Trouble));
        }

        figures.Add(new("Slope costs", words.Length(plan.Drain.SlopeDrop), "of height on the way down"));
        if (plan.Rig.Drain.Into == DrainTarget.Reservoir)
        {
            var over = plan.Drain.MouthOverRim;
            var where = over < 0 ? "BELOW the reservoir's rim" : "over the reservoir's rim";
            figures.Add(new("Mouth", words.Length(Math.Abs(over)), where));
        }

        return new(FigureSubject.Drain, "Drain", figures);
    }

    public static KeyFigureGroup Reservoir(Plan plan, QuantityWords words)
    {
        var tank = plan.Reservoir;
        List<KeyFigure> figures =
        [
            new("Usable water", words.Volume(tank.WorkingVolume), $"of {words.Volume(tank.RimVolume)} to the rim"),
            new(
                "Comes back at stop",
                words.Volume(tank.BackInAll),
                tank.Overflow > 0
                    ? $"RUNS OVER by {words.Volume(tank.Overflow)}: there is room for {words.Volume(tank.Freeboard)}"
                    : $"fits: there is room for {words.Volume(tank.Freeboard)}"
            )
            {
                Chief = true,
            },
        ];
        figures.Add(
            tank.Days is { } days
                ? new(
                    "Lasts",
                    $"{QuantityWords.Number(days, "0.#")} days",
                    $"in a hot week with {QuantityWords.Counted(tank.Plants, "plant", "plants")}"
                )
                {
                    Chief = true,
                }
                : new("Lasts", "as long as you like", "nothing drinks from it") { Chief = true }
        );
        figures.Add(new("Water weighs", words.Mass(tank.WaterMass), "in the full reservoir"));
        if (tank.SiphonsTo is { } level)
        {
            figures.Add(
                new("Siphons down to", words.Length(level), "over the floor, through low emitters or a broken line")
            );
        }

        return new(FigureSubject.Reservoir, "Reservoir", figures);
    }

    // The greatest cause first: that is the one to do something about.
    private static KeyFigure Causes(SpreadShares causes)
    {
        var told = new[]
        {
            (Share: causes.Pressure, Name: "pressure"),
            (Share: causes.Height, Name: "height"),
            (Share: causes.Manufacture, Name: "making"),
            (Share: causes.Rest, Name: "all together"),
        }
            .OrderByDescending(cause => cause.Share)
            .Select(cause => $"{QuantityWords.Percent(cause.Share)} {cause.Name}")
            .ToList();
        return new("Differences come from", told[0], $"then {string.Join(", ", told.Skip(1))}");
    }

    private static string DrainName(DrainRunPlan run) =>
        run.Row == 0 ? $"Collector {run.Run}" : $"Row {QuantityWords.Count(run.Row)}, {run.Run}";

    private static string At(PotFlow pot, QuantityWords words) =>
        $"row {QuantityWords.Count(pot.Row)}, pot {QuantityWords.Count(pot.Pot)}, at {words.Pressure(pot.Pressure)}";

    private static string Empty(int empty) =>
        empty == 0 ? "all planted" : $"{QuantityWords.Count(empty)} of them empty";

    private static string Shut(int shut) => shut == 0 ? "" : $"{QuantityWords.Count(shut)} of them shut";

    private static string Chance(double share) =>
        share switch
        {
            0 => "never",
            < 0.001 => "under 0.1 %",
            _ => QuantityWords.Percent(share),
        };
}
