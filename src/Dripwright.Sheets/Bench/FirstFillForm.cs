using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>First fill, leak test, catch test, power-off test and the wet day: steps to tick and numbers to write down.</summary>
public static class FirstFillForm
{
    /// <summary>Up to so many pots, every one is measured.</summary>
    internal const int EveryPotUpTo = 60;

    private static string Title => Words.Of("bench.fill.title");

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
        flow.Heading(Words.Of("bench.fill.leaks"))
            .Paragraph(
                Words.Of(
                    "bench.fill.how",
                    words.Volume(plan.Reservoir.FullVolume),
                    words.Length(tank.Full - tank.Floor)
                )
            )
            .Step(Words.Of("bench.fill.step.rinse"))
            .Step(
                Words.Of(
                    "bench.fill.step.mark",
                    words.Length(tank.Full - tank.Floor),
                    words.Length(tank.Lowest - tank.Floor)
                )
            )
            .Step(Words.Of("bench.fill.step.seams"))
            .Step(Words.Of("bench.fill.step.jug"))
            .Step(
                Words.Of(pump ? "bench.fill.step.pump" : "bench.fill.step.valve"),
                pump ? Words.Of("bench.fill.caution.plugs") : null
            )
            .Step(Words.Of("bench.fill.step.joints"), Words.Of("bench.fill.caution.barb"))
            .Step(Words.Of("bench.fill.step.drains"))
            .FormLine(Words.Of("bench.fill.form.leaks"))
            .WritingLines(1);
        if (plan.Reservoir.SecondsToEmptyDrainBlocked is { } dry)
        {
            flow.Paragraph(Words.Of("bench.fill.blocked", words.Time(dry)));
        }
    }

    private static void CatchTest(Flow flow, Plan plan, Wording words)
    {
        var (sample, every) = Sample(plan.Layout);
        var all = plan.Layout.Rows.Sum(r => r.Pots.Count);
        flow.Heading(Words.Of("bench.fill.catch")).RestartSteps();
        if (every > 1)
        {
            flow.Paragraph(Words.Of("bench.fill.sample", all, sample.Count, every));
        }

        flow.Step(Words.Of("bench.fill.step.air"))
            .Step(Words.Of("bench.fill.step.cup"))
            .Step(Words.Of("bench.fill.step.count"))
            .Step(Words.Of("bench.fill.step.tick"));
        flow.Space(1).Table(CatchTable(plan, sample));
        Verdict(flow, plan, words);
    }

    private static Table CatchTable(Plan plan, IReadOnlySet<(int Row, int Pot)> sample)
    {
        var table = new Table(
            new(Words.Of("bench.fill.column.row"), Align.Middle),
            new(Words.Of("bench.fill.column.pot"), Align.Middle),
            new(Words.Of("bench.fill.column.emitter"), Align.Middle),
            new(Words.Of("bench.fill.column.expected"), Align.Right),
            new(Words.Of("bench.fill.column.measured")),
            new(Words.Of("bench.fill.column.drain"), Align.Right),
            new(Words.Of("bench.fill.column.seconds")),
            new(Words.Of("bench.fill.column.ok"), Align.Tick)
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
        emitter.Open <= 0 ? Words.Of("bench.fill.shut") : QuantityWords.Number(emitter.Flow * 60e6, "0.0");

    private static void Verdict(Flow flow, Plan plan, Wording words)
    {
        var expected = string.Join(
            ", ",
            plan.Feed.Uniformity.Select(e => $"{words.Told.Of(e.Name)} {Wording.Percent(e.Value)}")
        );
        flow.Paragraph(
            Words.Of("bench.fill.verdict")
                + (expected.Length > 0 ? " " + Words.Of("bench.fill.uniformity.expected", expected) : "")
        );
        flow.FormLine(Words.Of("bench.fill.form.mean"), "mL")
            .FormLine(Words.Of("bench.fill.form.low"), "mL")
            .FormLine(Words.Of("bench.fill.form.uniformity"), "%");
    }

    private static void PowerOff(Flow flow, Plan plan, Wording words)
    {
        var reservoir = plan.Reservoir;
        var tank = plan.Layout.Tank;
        var full = tank.Full - tank.Floor;
        var rise = full - reservoir.RunningLevel;
        flow.Heading(Words.Of("bench.fill.off"))
            .RestartSteps()
            .Paragraph(
                Words.Of(
                    "bench.fill.back",
                    words.Volume(reservoir.BackInAll),
                    words.Volume(reservoir.BackFromLines),
                    words.Volume(reservoir.BackFromDrains),
                    words.Volume(reservoir.BackFromPots),
                    words.MarkWithUnit(reservoir.RunningLevel),
                    words.MarkWithUnit(rise),
                    words.Volume(reservoir.Freeboard)
                )
            )
            .Step(Words.Of("bench.fill.step.level"))
            .Step(
                Words.Of("bench.fill.step.stop"),
                reservoir.Overflow > 0
                    ? Words.Of("bench.fill.caution.overflow", words.Volume(reservoir.Overflow))
                    : null
            )
            .FormLine(
                Words.Of("bench.fill.form.running", words.MarkWithUnit(reservoir.RunningLevel)),
                words.Us ? "in" : "mm"
            )
            .FormLine(Words.Of("bench.fill.form.stopped", words.MarkWithUnit(full)), words.Us ? "in" : "mm")
            .FormLine(Words.Of("bench.fill.form.rise", words.MarkWithUnit(rise)), words.Us ? "in" : "mm")
            .Step(Words.Of("bench.fill.step.siphon"));
        if (reservoir.SiphonsTo is { } level)
        {
            flow.Caution(Words.Of("bench.fill.caution.siphon", words.Length(level))).Space(2);
        }
    }

    private static void WetDay(Flow flow)
    {
        flow.Heading(Words.Of("bench.fill.wet"))
            .RestartSteps()
            .Step(Words.Of("bench.fill.step.day"))
            .Step(Words.Of("bench.fill.step.look"))
            .Step(Words.Of("bench.fill.step.strainer"))
            .FormLine(Words.Of("bench.fill.form.start"))
            .FormLine(Words.Of("bench.fill.form.end"))
            .FormLine(Words.Of("bench.fill.form.strainer"))
            .WritingLines(2)
            .Space(4)
            .Step(Words.Of("bench.fill.step.plant"))
            .FormLine(Words.Of("bench.fill.form.by"))
            .FormLine(Words.Of("bench.fill.form.date"));
    }
}
