using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges whether a rig that waters every pot when it is new still does with a worn pump or a dirty strainer.</summary>
internal sealed class WearRules(Rig rig, RigLayout layout, FeedPlan feed, DosePlan dose, Judgement judge)
{
    public void Judge()
    {
        foreach (var worn in feed.Worn)
        {
            Judge(worn);
        }
    }

    /// <summary>The planted pots that are given enough today and would not be then.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="dose">What the pots are given today.</param>
    /// <param name="worn">The feed when it has worn.</param>
    public static IReadOnlyList<PotDose> Lacking(FeedPlan feed, DosePlan dose, WornFeed worn)
    {
        var then = feed.Pots.Zip(worn.Pots).ToDictionary(p => (p.First.Row, p.First.Pot), p => p.Second);
        // The same waterings with less flow: the lines fill a little slower too, which counts for little.
        return
        [
            .. dose.Pots.Where(p =>
                p.Given >= p.HotDay && p.Given * then[(p.Row, p.Pot)] / p.Flow < p.HotDay * (1 - 1e-9)
            ),
        ];
    }

    private void Judge(WornFeed worn)
    {
        var lacking = Lacking(feed, dose, worn);
        var needs = layout.Parts.Emitter.MinPressure;
        var now = feed.Emitters.Where(e => e.Open > 0).Select(e => e.Pressure).DefaultIfEmpty(0).Min();
        var weak = now >= needs && worn.LowestPressure < needs * (1 - 1e-9);
        if (lacking.Count == 0 && !weak)
        {
            return;
        }

        var isDirty = worn.Kind is WearKind.Strainer;
        var rule = isDirty ? "strainer-dirty" : "pump-worn";
        var fields = isDirty ? ["feed.strainer", .. PumpFields()] : PumpFields();
        var pressure = lacking.Count == 0;
        judge.Add(
            rule,
            pressure
                ? [Place.FeedLines]
                : [.. lacking.GroupBy(p => p.Row).Select(g => Place.OfPots(g.Key, [.. g.Select(p => p.Pot).Order()]))],
            fields,
            Phrase.Of(pressure ? $"finding.{rule}.pressure.what" : $"finding.{rule}.dose.what"),
            pressure ? Phrase.Of(Measured.Pressure(worn.LowestPressure)) : Phrase.Counted("count.pots", lacking.Count),
            pressure ? Limit.AtLeast(Measured.Pressure(needs)) : Limit.None,
            Phrase.Of($"finding.{rule}.remedy")
        );
    }

    private IReadOnlyList<string> PumpFields() =>
        layout.Parts.Pump switch
        {
            null => ["reservoir.base"],
            { IsOwn: true } when rig.Pump.Curve is null => ["pump.shutOffHead", "pump.openFlow"],
            { IsOwn: true } => ["pump.curve"],
            _ => ["pump.model"],
        };
}
