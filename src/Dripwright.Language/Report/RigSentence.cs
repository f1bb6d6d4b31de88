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
            rows.Count == 1 ? $"One {Shape(rows[0])}row of {QuantityWords.Counted(pots, "pot", "pots")}"
            : alike
                ? $"{QuantityWords.Count(rows.Count)} rows of {QuantityWords.Counted(rows[0].Pots.Count, "pot", "pots")}, "
                    + $"{QuantityWords.Count(pots)} in all"
            : $"{QuantityWords.Count(rows.Count)} rows with {QuantityWords.Count(pots)} pots in all";
        var planted = rows.SelectMany(row => row.Pots).Where(pot => pot.Planted).ToList();
        IReadOnlyList<string> crops = [.. planted.Select(pot => pot.Crop).Where(crop => crop.Length > 0).Distinct()];
        var most = crops.Count > 5 ? [.. crops.Take(4), "more"] : crops;
        var with = most.Count == 0 ? "" : $" with {QuantityWords.Listed(most)}";
        return planted.Count == pots
            ? $"{text}, all planted{with}."
            : $"{text}, {QuantityWords.Count(planted.Count)} planted{with}.";
    }

    private static string Shape(RowLayout row) => row.Spec.Arrangement == Arrangement.Staggered ? "staggered " : "";

    private static string Feed(Plan plan, QuantityWords words)
    {
        var entry = plan.Rig.Feed.Entry switch
        {
            FeedEntry.End => "fed from one end",
            FeedEntry.Middle => "fed through a tee in the middle",
            FeedEntry.BothEnds => "fed from both ends",
            _ => "fed as a closed loop",
        };
        var source = plan.Layout.Parts.Pump is { } pump
            ? pump.IsOwn
                ? $"by a pump of yours ({pump.FiguresIn(words.Us ? UnitSystem.Us : UnitSystem.Metric)})"
                : $"by a {SummaryWords.Small(pump.Model.Name)}"
            : "by gravity, without a pump";
        var emitters = QuantityWords.Counted(plan.Rig.Feed.EmittersPerPot, "emitter", "emitters");
        return $"Each row has a {SummaryWords.Small(plan.Layout.Parts.Line.Name)}, {entry} {source}, with {emitters} a pot"
            + $" ({SummaryWords.Small(plan.Layout.Parts.Emitter.Name)}).";
    }

    private static string Drain(Plan plan, QuantityWords words)
    {
        var slope = plan.Rig.Drain.Slope > 0 ? $"falling {words.Slope(plan.Rig.Drain.Slope)}" : "laid level";
        var rim = words.Volume(plan.Reservoir.RimVolume);
        var target =
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? $"back into the reservoir of {rim} to the rim"
                : $"into a catch tank; the reservoir holds {rim} to the rim";
        return $"The drain is {SummaryWords.Small(plan.Layout.Parts.Drain.Name)}, {slope}, {target}.";
    }
}
