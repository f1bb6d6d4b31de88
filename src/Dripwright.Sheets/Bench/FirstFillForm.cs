using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>First fill, leak test, catch test, power-off test and the wet day: steps to tick and numbers to write down.</summary>
public static class FirstFillForm
{
    /// <summary>Up to so many pots, every one is measured.</summary>
    internal const int EveryPotUpTo = 60;

    private const string Title = "First fill and tests";

    /// <summary>The sheets.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        var words = new Wording(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Title);
        Fill(flow, plan, words);
        CatchTest(flow, plan, words);
        PowerOff(flow, plan, words);
        WetDay(flow);
        return flow.Build();
    }

    /// <summary>The pots that the catch test measures: in each row the first, the middle, the last and every n-th.</summary>
    internal static (IReadOnlySet<(int Row, int Pot)> Pots, int Every) Sample(RigLayout layout)
    {
        var all = layout.Rows.Sum(r => r.Pots.Count);
        var every = all <= EveryPotUpTo ? 1 : (int)Math.Ceiling(all / (double)EveryPotUpTo);
        var pots = new HashSet<(int Row, int Pot)>();
        foreach (var row in layout.Rows)
        {
            var count = row.Pots.Count;
            foreach (var pot in row.Pots.Select(p => p.Number))
            {
                if ((pot - 1) % every == 0 || pot == count || pot == (count + 1) / 2)
                {
                    pots.Add((row.Number, pot));
                }
            }
        }

        return (pots, every);
    }

    private static void Fill(Flow flow, Plan plan, Wording words)
    {
        var tank = plan.Layout.Tank;
        var pump = plan.Layout.Parts.Pump is not null;
        flow.Heading("First fill and leak test")
            .Paragraph(
                $"Clean water only, no salts. The reservoir takes {words.Volume(plan.Reservoir.FullVolume)} to the full mark, "
                    + $"{words.Length(tank.Full - tank.Floor)} over its floor. Have a bucket, a towel and this sheet at hand."
            )
            .Step(
                "Rinse the feed line with a garden hose before the emitters go in, or with every flush cap off: chips and dust "
                    + "run out."
            )
            .Step(
                $"Mark the full level ({words.Length(tank.Full - tank.Floor)}) and the lowest level ({words.Length(tank.Lowest - tank.Floor)}) inside the reservoir."
            )
            .Step("Fill to the full mark and wait ten minutes. Wipe every seam below the water with dry paper.")
            .Step(
                "Pour a jug of water into the pot farthest from the reservoir. It must come back by itself, with none left standing in the drain."
            )
            .Step(
                $"{(pump ? "Start the pump" : "Open the valve")} with the flush caps open. Close them one by one, the farthest "
                    + "last.",
                pump
                    ? "Keep plugs, timer and outlet above the highest water, with a drip loop in the cord and a "
                        + "residual-current device (GFCI) before the pump. Dry hands."
                    : null
            )
            .Step(
                "Wipe every joint, barb, grommet and pot drain with dry paper while the water runs. Mark leaks on the plumbing drawing.",
                "Turn the pump off before you touch a joint that leaks: a barb under pressure comes off at once."
            )
            .Step("Watch each pot drain for a minute: the water must leave as fast as it comes.")
            .FormLine("Leaks found at")
            .WritingLines(1);
        if (plan.Reservoir.SecondsToEmptyDrainBlocked is { } dry)
        {
            flow.Paragraph(
                $"Stay with it: with a blocked drain the reservoir would be down to its lowest level after {words.Time(dry)}."
            );
        }
    }

    private static void CatchTest(Flow flow, Plan plan, Wording words)
    {
        var (sample, every) = Sample(plan.Layout);
        var all = plan.Layout.Rows.Sum(r => r.Pots.Count);
        flow.Heading("Catch test").RestartSteps();
        if (every > 1)
        {
            flow.Paragraph(
                $"This rig has {Wording.Count(all)} pots. Measure {Wording.Count(sample.Count)} of them: in each row the "
                    + $"first, the middle and the last pot, and every {Ordinal(every)} one between."
            );
        }

        flow.Step("Let the water run until no air comes, at least five minutes.")
            .Step(
                "Hold a cup under one emitter for exactly one minute, read it in millilitres and write it down. Take the emitters in the order of the list."
            )
            .Step("Stop the water. Count the seconds until the pot's drain has run down to single drops.")
            .Step(
                "Tick what lies within a tenth of the number expected. An emitter far under it is clogged or pinched; a whole row under it points at the line or the strainer."
            );
        flow.Space(1).Table(CatchTable(plan, sample));
        Verdict(flow, plan);
    }

    private static Table CatchTable(Plan plan, IReadOnlySet<(int Row, int Pot)> sample)
    {
        var table = new Table(
            new("Row", Align.Middle),
            new("Pot", Align.Middle),
            new("Emitter", Align.Middle),
            new("Expected mL in a minute", Align.Right),
            new("Measured mL"),
            new("Drain runs, s", Align.Right),
            new("Measured s"),
            new("OK", Align.Tick)
        );
        var drains = plan.Drain.Pots.ToDictionary(p => p.Row);
        foreach (var emitter in plan.Feed.Emitters.Where(e => sample.Contains((e.Row, e.Pot))))
        {
            var drain = drains.GetValueOrDefault(emitter.Row);
            table.Row(
                Wording.Count(emitter.Row),
                Wording.Count(emitter.Pot),
                Wording.Count(emitter.Index),
                Expected(emitter),
                "……………………………",
                emitter.Index > 1 || drain is null ? "" : QuantityWords.Number(drain.SecondsToEmpty, "0"),
                emitter.Index > 1 ? "" : "…………………"
            );
        }

        return table;
    }

    private static string Expected(EmitterFlow emitter) =>
        emitter.Open <= 0 ? "shut: none" : QuantityWords.Number(emitter.Flow * 60e6, "0.0");

    private static void Verdict(Flow flow, Plan plan)
    {
        flow.Paragraph(
            "Mean of the lowest quarter of all measured emitters over the mean of all: that is your uniformity."
                + (
                    plan.Feed.Uniformity.Count > 0
                        ? " The plan expects: "
                            + string.Join(
                                ", ",
                                plan.Feed.Uniformity.Select(e => $"{e.Name} {Wording.Percent(e.Value)}")
                            )
                            + "."
                        : ""
                )
        );
        flow.FormLine("Mean of all", "mL").FormLine("Mean of the lowest quarter", "mL").FormLine("Uniformity", "%");
    }

    private static void PowerOff(Flow flow, Plan plan, Wording words)
    {
        var reservoir = plan.Reservoir;
        var tank = plan.Layout.Tank;
        var full = tank.Full - tank.Floor;
        var rise = full - reservoir.RunningLevel;
        flow.Heading("Power-off test")
            .RestartSteps()
            .Paragraph(
                $"When the water stops, {words.Volume(reservoir.BackInAll)} run back: {words.Volume(reservoir.BackFromLines)} from "
                    + $"the lines, {words.Volume(reservoir.BackFromDrains)} from the drains, {words.Volume(reservoir.BackFromPots)} "
                    + $"from the pots. The level rises from {words.MarkWithUnit(reservoir.RunningLevel)} by about {words.MarkWithUnit(rise)}. Up to "
                    + $"the rim there is room for {words.Volume(reservoir.Freeboard)} over the full mark."
            )
            .Step("Run the water for half an hour and write down the level.")
            .Step(
                "Pull the plug (or close the valve) and write down the level when nothing drips any more.",
                reservoir.Overflow > 0
                    ? $"By the plan {words.Volume(reservoir.Overflow)} run over the rim: lower the full mark first."
                    : null
            )
            .FormLine(
                $"Level while running, expected {words.MarkWithUnit(reservoir.RunningLevel)}",
                words.Us ? "in" : "mm"
            )
            .FormLine($"Level after the stop, expected {words.MarkWithUnit(full)}", words.Us ? "in" : "mm")
            .FormLine($"Rise, expected {words.MarkWithUnit(rise)}", words.Us ? "in" : "mm")
            .Step(
                "Watch the emitters: if one goes on running after ten minutes the line siphons. Fit or open the siphon break."
            );
        if (reservoir.SiphonsTo is { } level)
        {
            flow.Caution(
                    $"By the plan this rig siphons: the reservoir may empty down to {words.Length(level)} over its floor."
                )
                .Space(2);
        }
    }

    private static void WetDay(Flow flow)
    {
        flow.Heading("Wet run, 24 hours")
            .RestartSteps()
            .Step("Let the rig run on its timer for a day with clean water and no plants.")
            .Step(
                "After the first hour, the evening and the next morning: dry floor, dry joints, level as before, nothing warm at the plugs."
            )
            .Step("Clean the strainer, look what it caught, flush the ends.")
            .FormLine("Level at the start")
            .FormLine("Level after 24 hours")
            .FormLine("In the strainer")
            .WritingLines(2)
            .Space(4)
            .Step("Only now: fill the pots, fill with feed, plant.")
            .FormLine("Tested by")
            .FormLine("Date");
    }

    private static string Ordinal(int number)
    {
        var ending = (number % 100) is 11 or 12 or 13
            ? "th"
            : (number % 10) switch
            {
                1 => "st",
                2 => "nd",
                3 => "rd",
                _ => "th",
            };
        return Wording.Count(number) + ending;
    }
}
