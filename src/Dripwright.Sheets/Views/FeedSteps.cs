using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for the feed lines and their emitters.</summary>
internal sealed class FeedSteps(Plan plan)
{
    private readonly Wording words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var parts = plan.Layout.Parts;
        var feed = plan.Rig.Feed;
        var rows = plan.Layout.Rows;
        var emitters = rows.Sum(r => r.Emitters.Count);
        var labels = rows.SelectMany(r => r.Feed).SelectMany(r => r.Pieces).Select(p => p.Label).ToList();
        flow.Heading("Feed line");
        flow.Step(
            $"Lay the feed line ({parts.Line.Name}; pieces {(labels.Count <= 10 ? string.Join(", ", labels) : "as on the plumbing sheets")}) along the pots, its middle {words.MarkWithUnit(rows[0].Feed[0].Path[0].Z - rows[0].Base)} over the pots' base. {(parts.Line.Flexible ? "Hose straightens when it lies in the sun or in warm water for a while." : "Support it at each frame.")}"
        );
        if (emitters > 0)
        {
            flow.Step(
                $"Make {Wording.Counted(emitters, "hole")} of {words.MarkWithUnit(parts.Emitter.Punch)} by the hole map, then push in {Wording.Counted(emitters, "emitter")} ({parts.Emitter.Name}){(feed.MicrotubeLength > 0 ? $" on small tubes of {words.MarkWithUnit(feed.MicrotubeLength)}" : "")}.",
                "Point the punch away from the hand that holds the line."
            );
        }

        Rest(flow);
        Hold(flow);
        var shut = rows.SelectMany(r => r.Emitters).Count(e => e.Open <= 0);
        if (shut > 0)
        {
            flow.Step($"Shut or plug the {Wording.Counted(shut, "emitter")} at empty pots.");
        }

        if (feed.InlineValves)
        {
            flow.Step(
                $"Put a small valve into each emitter's tube and open it {words.Share(feed.ValveOpen)}, unless the planting says otherwise."
            );
        }

        flow.Step(Entry(feed.Entry) + " Tighten a clamp over every barb.");
        if (feed.Entry is FeedEntry.End or FeedEntry.Middle)
        {
            flow.Step("Leave the caps at the dead ends off until the line has been flushed.");
        }
    }

    private void Rest(Flow flow)
    {
        if (PrintedSteps.Of(plan, PrintedKind.LineRest) is { Length: > 0 } rests)
        {
            flow.Step(
                $"Hook the line rests ({rests}) over the pots' rims, lay the line into their seats and put one cable tie around each: snug, without a dent."
            );
        }
    }

    private void Hold(Flow flow)
    {
        if (PrintedSteps.Of(plan, PrintedKind.StakeHolder) is { Length: > 0 } holders)
        {
            flow.Step(
                $"Hook the stake holders ({holders}) over the rims, one for each emitter, and push its stake through: the drip must fall into the pot, a hand from the stem."
            );
        }
    }

    private static string Entry(FeedEntry entry) =>
        entry switch
        {
            FeedEntry.Middle => "Join each row's line to the header through the tee in its middle.",
            FeedEntry.BothEnds => "Join each row's line to the header at both ends.",
            FeedEntry.Loop => "Close each row's line to a loop with its elbows, and join it to the header at the tee.",
            _ => "Join each row's line to the header at the end next to the reservoir.",
        };
}
