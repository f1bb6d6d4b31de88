using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges the siphon-breaking hole: where it spouts, and what it takes from the pots.</summary>
internal sealed class BreakHoleRules(Rig rig, RigLayout layout, FeedPlan feed, Judgement judge)
{
    public void Judge()
    {
        if (layout.BreakHole is not { } hole)
        {
            return;
        }

        OverRim(hole);
        Takes();
    }

    private void OverRim(BreakHole hole)
    {
        var top = hole.Height + (hole.Diameter / 2);
        if (top <= layout.Tank.Rim)
        {
            return;
        }

        judge.Add(
            "break-hole-over-rim",
            [Place.Reservoir],
            ["reservoir.fill", "feed.siphonBreak"],
            Phrase.Of("finding.break-hole-over-rim.what"),
            Phrase.Of("finding.break-hole-over-rim.value", Measured.Length(top - layout.Tank.Rim)),
            Phrase.Of("finding.break-hole-over-rim.limit"),
            Phrase.Of("finding.break-hole-over-rim.remedy"),
            Lower(top - layout.Tank.Rim)
        );
    }

    // So much lower the water, so much lower the hole; but a fitting may be in its way, so it is laid before it is offered.
    private IReadOnlyList<Cure> Lower(double by)
    {
        var percent = (int)Math.Floor((rig.Reservoir.Fill - (by / layout.Parts.Tank.Height)) * 100);
        var changed = rig with { Reservoir = rig.Reservoir with { Fill = percent / 100.0 } };
        return
            percent > 0
            && RigLayout.TryOf(changed, layout.Parts.Catalogue) is { BreakHole: { } hole } placed
            && hole.Height + (hole.Diameter / 2) <= placed.Tank.Rim
            ? RigCure.Offered(RigCure.Text("reservoir.fill", $"{QuantityWords.Count(percent)} %"))
            : [];
    }

    private void Takes()
    {
        if (feed.BreakHole is not { TotalWithout: > 0 } effect)
        {
            return;
        }

        var lost = 1 - (feed.TotalFlow / effect.TotalWithout);
        var most = RuleBook.Limit("break-hole-takes");
        if (lost > most)
        {
            judge.Add(
                "break-hole-takes",
                [Place.Pump],
                ["feed.siphonBreak", "pump.model"],
                Phrase.Of(
                    "finding.break-hole-takes.what",
                    Measured.Flow(effect.Flow),
                    Measured.Flow(feed.OperatingPoint?.Flow ?? 0)
                ),
                Phrase.Of("finding.break-hole-takes.value", Measured.Percent(lost)),
                Limit.AtMost(Measured.Percent(most)),
                Phrase.Of("finding.break-hole-takes.remedy")
            );
        }
    }
}
