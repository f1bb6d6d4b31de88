using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>Rigs in plain words, alone and beside one another.</summary>
internal static class RigWords
{
    /// <summary>What a rig is, in one line.</summary>
    public static string Title(Plan plan) =>
        $"{Rows(plan)}, fed {Entry(plan.Rig.Feed.Entry)}, {Pump(plan)}, {Emitters(plan)}";

    /// <summary>Why the first of a list stands there.</summary>
    public static string First(Plan plan) =>
        $"The cheapest that passes every rule. {Sentence(Uniformity(plan))}; the reservoir lasts {Days(plan)} days.{OneEmitter(plan)}";

    /// <summary>What a rig does better than another and what it gives up for it.</summary>
    public static string Beside(Plan before, Plan plan)
    {
        var words = new QuantityWords(plan.Rig.Units);
        List<string> by = [];
        List<string> better = [Uniformity(plan) + $" instead of {words.Share(Value(before))}"];
        List<string> worse =
        [
            $"{Money(plan.Parts.Cost.Known - before.Parts.Cost.Known)} {plan.Parts.Currency}".TrimEnd() + " more",
        ];
        Differ(by, Rows(before), Rows(plan), $"{Rows(plan)} instead of {Rows(before)}");
        Differ(by, Entry(before.Rig.Feed.Entry), Entry(plan.Rig.Feed.Entry), $"fed {Entry(plan.Rig.Feed.Entry)}");
        Differ(by, Pipes(before), Pipes(plan), Pipes(plan));
        Differ(by, Emitters(before), Emitters(plan), Emitters(plan));
        Differ(by, Pump(before), Pump(plan), Pump(plan));
        Differ(
            by,
            before.Rig.Drain.Exit.ToString(),
            plan.Rig.Drain.Exit.ToString(),
            plan.Rig.Drain.Exit == DrainExit.Middle ? "drained from the middle" : "drained at the end"
        );
        Differ(by, Tank(before), Tank(plan), Tank(plan));
        Compare(
            better,
            worse,
            Watts(before),
            Watts(plan),
            less: true,
            $"{words.Power(Watts(plan))} at the pump instead of {words.Power(Watts(before))}"
        );
        Compare(
            better,
            worse,
            before.Reservoir.Days ?? 0,
            plan.Reservoir.Days ?? 0,
            less: false,
            $"{Days(plan)} days from the reservoir instead of {Days(before)}"
        );
        Compare(
            better,
            worse,
            before.Layout.Rows.Count,
            plan.Layout.Rows.Count,
            less: true,
            $"{Count(plan.Layout.Rows.Count, "row")} to walk round instead of {Count(before.Layout.Rows.Count, "row")}"
        );
        string made = by.Count > 0 ? $" It is {string.Join("; ", by)}." : "";
        return $"Better: {string.Join("; ", better)}. Given up: {string.Join("; ", worse)}.{made}{OneEmitter(plan)}";
    }

    /// <summary>A sum of money with two digits.</summary>
    public static string Money(decimal sum) => sum.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);

    private static void Differ(List<string> list, string before, string now, string text)
    {
        if (before != now)
        {
            list.Add(text);
        }
    }

    private static void Compare(
        List<string> better,
        List<string> worse,
        double before,
        double now,
        bool less,
        string text
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

    private static string Uniformity(Plan plan) => $"uniformity {new QuantityWords(plan.Rig.Units).Share(Value(plan))}";

    private static string Days(Plan plan) => QuantityWords.Number(Math.Floor((plan.Reservoir.Days ?? 0) * 10) / 10);

    private static string Rows(Plan plan)
    {
        bool staggered = plan.Rig.Rows.Any(r => r.Arrangement == Arrangement.Staggered);
        int rows = plan.Layout.Rows.Count;
        int most = plan.Layout.Rows.Max(r => r.Pots.Count);
        int least = plan.Layout.Rows.Min(r => r.Pots.Count);
        string pots = most == least ? Count(most, "pot") : $"{QuantityWords.Count(least)} or {Count(most, "pot")}";
        return $"{QuantityWords.Count(rows)} {(staggered ? "staggered " : "")}{(rows == 1 ? "row" : "rows")} of {pots}";
    }

    private static string Entry(FeedEntry entry) =>
        entry switch
        {
            FeedEntry.Middle => "through a tee in the middle",
            FeedEntry.BothEnds => "from both ends",
            FeedEntry.Loop => "as a loop",
            _ => "at one end",
        };

    private static string Pipes(Plan plan) =>
        $"line {plan.Layout.Parts.Line.Name}, header {plan.Layout.Parts.Header.Name}";

    private static string Emitters(Plan plan) =>
        $"{Count(plan.Rig.Feed.EmittersPerPot, "emitter")} a pot: {plan.Layout.Parts.Emitter.Name}";

    private static string Pump(Plan plan) => plan.Layout.Parts.Pump?.NameIn(plan.Rig.Units) ?? "gravity from the shelf";

    private static string Tank(Plan plan) => plan.Layout.Parts.Tank.NameIn(plan.Rig.Units);

    private static string OneEmitter(Plan plan) =>
        plan.Rig.Feed.EmittersPerPot > 1 ? "" : " With one emitter a pot, a blocked one dries the plant.";

    private static string Count(int number, string thing) =>
        $"{QuantityWords.Count(number)} {thing}{(number == 1 ? "" : "s")}";

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
