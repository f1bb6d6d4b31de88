using Dripwright.Engine;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Language.Report;

/// <summary>Says in a few plain sentences what a rig is.</summary>
internal static class RigSentence
{
    private const int MostCrops = 5;

    public static string Of(Plan plan, PlanWords told) => $"{Rows(plan, told)} {Feed(plan, told)} {Drain(plan, told)}";

    private static string Rows(Plan plan, PlanWords told)
    {
        var rows = plan.Layout.Rows;
        var pots = rows.Sum(row => row.Pots.Count);
        var inAll = Words.Count("count.pots", pots);
        var text = rows switch
        {
            [{ Spec.Arrangement: Arrangement.Staggered }] => Words.Of("sentence.rows.staggered", inAll),
            [_] => Words.Of("sentence.rows.one", inAll),
            [var first, ..] when rows.All(row => row.Pots.Count == first.Pots.Count) => Words.Of(
                "sentence.rows.alike",
                rows.Count,
                Words.Count("count.pots", first.Pots.Count),
                pots
            ),
            _ => Words.Of("sentence.rows.many", rows.Count, inAll),
        };
        var planted = rows.SelectMany(row => row.Pots).Where(pot => pot.Planted).ToList();
        var with = Crops([.. planted.Select(pot => pot.Crop).Where(crop => crop.Length > 0).Distinct()], told);
        return (planted.Count == pots, with.Length == 0) switch
        {
            (true, true) => Words.Of("sentence.planted", text),
            (true, false) => Words.Of("sentence.planted.with", text, with),
            (false, true) => Words.Of("sentence.some", text, planted.Count),
            _ => Words.Of("sentence.some.with", text, planted.Count, with),
        };
    }

    private static string Crops(IReadOnlyList<string> crops, PlanWords told)
    {
        List<Phrase> named = [.. crops.Select(Phrase.Plain)];
        return told.Of(
            new Several(
                crops.Count > MostCrops ? [.. named.Take(MostCrops - 1), Phrase.Of("sentence.crops.more")] : named
            )
        );
    }

    private static string Feed(Plan plan, PlanWords told)
    {
        var parts = plan.Layout.Parts;
        return Words.Of(
            "sentence.feed",
            SummaryWords.Small(parts.Line.Name),
            plan.Rig.Feed.Entry switch
            {
                FeedEntry.End => Words.Of("sentence.entry.end"),
                FeedEntry.Middle => Words.Of("sentence.entry.middle"),
                FeedEntry.BothEnds => Words.Of("sentence.entry.both-ends"),
                _ => Words.Of("sentence.entry.loop"),
            },
            parts.Pump switch
            {
                null => Words.Of("sentence.pump.none"),
                { IsOwn: true } own => Words.Of("sentence.pump.own", told.Of(own.Figures)),
                var pump => Words.Of("sentence.pump.named", SummaryWords.Small(pump.Model.Name)),
            },
            Words.Count("count.emitters", plan.Rig.Feed.EmittersPerPot),
            SummaryWords.Small(parts.Emitter.Name)
        );
    }

    private static string Drain(Plan plan, PlanWords told)
    {
        var words = told.Quantities;
        var rim = words.Volume(plan.Reservoir.RimVolume);
        return Words.Of(
            "sentence.drain",
            SummaryWords.Small(plan.Layout.Parts.Drain.Name),
            plan.Rig.Drain.Slope > 0
                ? Words.Of("sentence.drain.falling", words.Slope(plan.Rig.Drain.Slope))
                : Words.Of("sentence.drain.level"),
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? Words.Of("sentence.drain.reservoir", rim)
                : Words.Of("sentence.drain.catch-tank", rim)
        );
    }
}
