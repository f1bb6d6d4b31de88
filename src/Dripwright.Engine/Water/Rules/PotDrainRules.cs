using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Water;

/// <summary>Judges how the pots drain.</summary>
internal sealed class PotDrainRules(FeedPlan feed, DrainPlan drain, bool drowned, Judgement judge)
{
    public void Judge()
    {
        var flows = feed.Pots.ToLookup(p => p.Row);
        foreach (var pot in drain.Pots)
        {
            Ponding(pot);
            Elbow(pot, flows[pot.Row].Max(p => p.Flow));
            Blocked(pot);
        }
    }

    private void Ponding(PotDrainPlan pot)
    {
        if (pot.PondingPots.Count > 0)
        {
            judge.Add(
                "pots-pond",
                [Place.OfPots(pot.Row, pot.PondingPots)],
                drowned
                    ? ["reservoir.tank", "reservoir.fill", "rows[0].standHeight"]
                    : ["drain.belowPots", "drain.pipe", "drain.slope"],
                drowned ? Phrase.Of("finding.pots-pond.drowned.what") : Phrase.Of("finding.pots-pond.what"),
                Phrase.Counted("count.pots", pot.PondingPots.Count),
                Limit.None,
                drowned ? Phrase.Of("finding.pots-pond.drowned.remedy") : Phrase.Of("finding.pots-pond.remedy")
            );
        }
    }

    private void Elbow(PotDrainPlan pot, double mostFed)
    {
        var least = mostFed * RuleBook.Limit("pot-drain-small");
        if (pot.MostFlow < least)
        {
            judge.Add(
                "pot-drain-small",
                [Place.OfRow(pot.Row)],
                ["drain.outlet", "feed.emitter"],
                Phrase.Of("finding.pot-drain-small.what"),
                Phrase.Of(Measured.Flow(pot.MostFlow)),
                Limit.AtLeast(Measured.Flow(least)),
                Phrase.Of("finding.pot-drain-small.remedy")
            );
        }
    }

    private void Blocked(PotDrainPlan pot)
    {
        if (pot.SecondsToSpill > 0)
        {
            var after = Measured.Time(pot.SecondsToSpill);
            judge.Add(
                "drain-blocked",
                [Place.OfRow(pot.Row)],
                ["drain.vent"],
                pot.SpillsAtVent
                    ? Phrase.Of("finding.drain-blocked.vent.what", after)
                    : Phrase.Of("finding.drain-blocked.pot.what", after, pot.FirstToSpill),
                Phrase.Of(after),
                Phrase.None,
                Phrase.Of("finding.drain-blocked.remedy")
            );
        }
    }
}
