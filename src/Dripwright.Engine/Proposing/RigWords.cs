using System.Globalization;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>What a rig is, alone and beside another.</summary>
internal static class RigWords
{
    /// <summary>What a rig is, in one line.</summary>
    public static Phrase Title(Plan plan) =>
        Phrase.Of("proposal.title", Rows(plan), Entry(plan), Pump(plan), Emitters(plan));

    /// <summary>Why the first of a list stands there.</summary>
    public static Phrase First(Plan plan) =>
        Sentences(
            Phrase.Of("proposal.first", Measured.Share(Value(plan)), Measured.Days(Days(plan))),
            OneEmitter(plan),
            Tie(plan)
        );

    /// <summary>What a rig does better than another and what it gives up for it.</summary>
    public static Phrase Beside(Plan before, Plan plan)
    {
        List<Phrase> better =
        [
            Phrase.Of("proposal.uniformity", Measured.Share(Value(plan)), Measured.Share(Value(before))),
        ];
        List<Phrase> worse =
        [
            Phrase.Of("proposal.cost", Sum(plan.Parts.Cost.Known - before.Parts.Cost.Known, plan.Parts.Currency)),
        ];
        Compare(
            better,
            worse,
            Watts(before),
            Watts(plan),
            less: true,
            Phrase.Of("proposal.power", Measured.Power(Watts(plan)), Measured.Power(Watts(before)))
        );
        Compare(
            better,
            worse,
            (before.Reservoir.Days ?? 0),
            (plan.Reservoir.Days ?? 0),
            less: false,
            Phrase.Of("proposal.days", Measured.Days(Days(plan)), Measured.Days(Days(before)))
        );
        Compare(
            better,
            worse,
            before.Layout.Rows.Count,
            plan.Layout.Rows.Count,
            less: true,
            Phrase.Counted("proposal.walk", plan.Layout.Rows.Count, before.Layout.Rows.Count)
        );
        return Sentences(
            Phrase.Of("proposal.beside", All(better), All(worse)),
            Changed(before, plan) is { IsNone: false } by ? Phrase.Of("proposal.by", by) : Phrase.None,
            OneEmitter(plan),
            Tie(plan)
        );
    }

    /// <summary>A sum of money with two digits.</summary>
    public static string Money(decimal sum) => sum.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Sum(decimal sum, string currency) => $"{Money(sum)} {currency}".TrimEnd();

    private static Phrase All(IReadOnlyList<Phrase> phrases) => Phrase.Of(new Several(phrases, Joint.Semicolon));

    private static Phrase Sentences(params Phrase[] sentences) => Phrase.Of(new Several(sentences, Joint.Sentence));

    // How the rig is made otherwise than the one before it.
    private static Phrase Changed(Plan before, Plan plan)
    {
        List<Phrase> by = [];
        void Differ(Func<Plan, Phrase> of, Phrase? text = null)
        {
            if (of(before) != of(plan))
            {
                by.Add(text ?? of(plan));
            }
        }

        Differ(Rows, Phrase.Of("proposal.rows.instead", Rows(plan), Rows(before)));
        Differ(Entry);
        Differ(Pipes);
        Differ(Emitters);
        Differ(Pump);
        Differ(Exit);
        Differ(one => one.Layout.Parts.Tank.Name);
        return All(by);
    }

    private static void Compare(
        List<Phrase> better,
        List<Phrase> worse,
        double before,
        double now,
        bool less,
        Phrase text
    )
    {
        // What prints alike is alike.
        if (Math.Abs(now - before) < 0.05)
        {
            return;
        }

        (now < before == less ? better : worse).Add(text);
    }

    private static double Value(Plan plan) => plan.Feed.Uniformity[0].Value;

    private static double Watts(Plan plan) => plan.Feed.OperatingPoint?.Power ?? 0;

    // [s] Cut to a tenth of a day, so that no more is promised than there is.
    private static double Days(Plan plan) => Math.Floor((plan.Reservoir.Days ?? 0) * 10) / 10 * 86_400;

    private static Phrase Rows(Plan plan)
    {
        var staggered = plan.Rig.Rows.Any(r => r.Arrangement == Arrangement.Staggered);
        var most = plan.Layout.Rows.Max(r => r.Pots.Count);
        var least = plan.Layout.Rows.Min(r => r.Pots.Count);
        var pots = most == least ? Phrase.Counted("count.pots", most) : Phrase.Of("proposal.pots", least, most);
        return Phrase.Counted(staggered ? "proposal.rows.staggered" : "proposal.rows", plan.Layout.Rows.Count, pots);
    }

    private static Phrase Entry(Plan plan) =>
        Phrase.Of(
            plan.Rig.Feed.Entry switch
            {
                FeedEntry.Middle => "proposal.entry.middle",
                FeedEntry.BothEnds => "proposal.entry.both-ends",
                FeedEntry.Loop => "proposal.entry.loop",
                _ => "proposal.entry.end",
            }
        );

    private static Phrase Exit(Plan plan) =>
        Phrase.Of(plan.Rig.Drain.Exit == DrainExit.Middle ? "proposal.exit.middle" : "proposal.exit.end");

    private static Phrase Pipes(Plan plan) =>
        Phrase.Of("proposal.pipes", plan.Layout.Parts.Line.Name, plan.Layout.Parts.Header.Name);

    private static Phrase Emitters(Plan plan) =>
        Phrase.Counted("proposal.emitters", plan.Rig.Feed.EmittersPerPot, plan.Layout.Parts.Emitter.Name);

    private static Phrase Pump(Plan plan) => plan.Layout.Parts.Pump?.Name ?? Phrase.Of("proposal.gravity");

    private static Phrase OneEmitter(Plan plan) =>
        plan.Rig.Feed.EmittersPerPot > 1 ? Phrase.None : Phrase.Of("proposal.one-emitter");

    private static Phrase Tie(Plan plan) => plan.Rig.Stand.Tied ? Phrase.Of("proposal.tied") : Phrase.None;
}
