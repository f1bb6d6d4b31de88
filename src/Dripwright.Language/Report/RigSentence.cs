using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <summary>Says in a few plain sentences what a rig is.</summary>
internal static class RigSentence
{
    public static string Of(Plan plan, QuantityWords words) => $"{Rows(plan)} {Feed(plan, words)} {Drain(plan, words)}";

    private static string Rows(Plan plan)
    {
        var rows = plan.Layout.Rows;
        var pots = rows.Sum(row => row.Pots.Count);
        var alike = rows.Select(row => row.Pots.Count).Distinct().Count() == 1;
        var text =
            rows.Count == 1 ? Words.Of(Shape(rows[0]), Pots(pots))
            : alike
                ? Words.Of(
                    "sentence.rows.alike",
                    QuantityWords.Count(rows.Count),
                    Pots(rows[0].Pots.Count),
                    QuantityWords.Count(pots)
                )
            : Words.Of("sentence.rows", QuantityWords.Count(rows.Count), QuantityWords.Count(pots));
        var planted = rows.SelectMany(row => row.Pots).Where(pot => pot.Planted).ToList();
        IReadOnlyList<string> crops = [.. planted.Select(pot => pot.Crop).Where(crop => crop.Length > 0).Distinct()];
        var most = crops.Count > 5 ? [.. crops.Take(4), Words.Of("sentence.more")] : crops;
        var list =
            most.Count > 1
                ? Words.Of("list.and", string.Join(", ", most.SkipLast(1)), most[^1])
                : string.Join("", most);
        var all = planted.Count == pots ? "sentence.planted.all" : "sentence.planted";
        return Words.Of(list.Length == 0 ? all : all + ".with", text, QuantityWords.Count(planted.Count), list);
    }

    private static string Shape(RowLayout row) =>
        row.Spec.Arrangement == Arrangement.Staggered ? "sentence.row.staggered" : "sentence.row";

    private static string Pots(int count) => SummaryWords.Several("sentence.pots", count);

    private static string Feed(Plan plan, QuantityWords words)
    {
        var entry = plan.Rig.Feed.Entry switch
        {
            FeedEntry.End => "end",
            FeedEntry.Middle => "middle",
            FeedEntry.BothEnds => "both-ends",
            _ => "loop",
        };
        var source = plan.Layout.Parts.Pump is { } pump
            ? pump.IsOwn
                ? Words.Of("sentence.pump.own", pump.FiguresIn(words.Us ? UnitSystem.Us : UnitSystem.Metric))
                : Words.Of("sentence.pump", SummaryWords.Small(pump.Model.Name))
            : Words.Of("sentence.gravity");
        var emitters = SummaryWords.Several("sentence.emitters", plan.Rig.Feed.EmittersPerPot);
        return Words.Of(
            $"sentence.feed.{entry}",
            SummaryWords.Small(plan.Layout.Parts.Line.Name),
            source,
            emitters,
            SummaryWords.Small(plan.Layout.Parts.Emitter.Name)
        );
    }

    private static string Drain(Plan plan, QuantityWords words)
    {
        var slope =
            plan.Rig.Drain.Slope > 0
                ? Words.Of("sentence.falling", words.Slope(plan.Rig.Drain.Slope))
                : Words.Of("sentence.level");
        var rim = words.Volume(plan.Reservoir.RimVolume);
        var target =
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? Words.Of("sentence.into.reservoir", rim)
                : Words.Of("sentence.into.catch-tank", rim);
        return Words.Of("sentence.drain", SummaryWords.Small(plan.Layout.Parts.Drain.Name), slope, target);
    }
}
