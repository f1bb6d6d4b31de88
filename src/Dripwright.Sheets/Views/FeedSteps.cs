using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Steps for the feed lines and their emitters.</summary>
internal sealed class FeedSteps(Plan plan)
{
    private readonly Wording _words = new(plan.Rig.Units);

    /// <summary>Writes the steps.</summary>
    public void Write(Flow flow)
    {
        var parts = plan.Layout.Parts;
        var feed = plan.Rig.Feed;
        var rows = plan.Layout.Rows;
        var emitters = rows.Sum(r => r.Emitters.Count);
        var labels = rows.SelectMany(r => r.Feed).SelectMany(r => r.Pieces).Select(p => p.Label).ToList();
        flow.Heading(Words.Of("sheet.feed.title"));
        flow.Step(
            Words.Of(
                "sheet.feed.lay",
                parts.Line.Name,
                labels.Count <= 10 ? string.Join(", ", labels) : Words.Of("sheet.feed.lay.as-drawn"),
                _words.MarkWithUnit(rows[0].Feed[0].Path[0].Z - rows[0].Base),
                parts.Line.Flexible ? Words.Of("sheet.feed.lay.hose") : Words.Of("sheet.feed.lay.pipe")
            )
        );
        if (emitters > 0)
        {
            flow.Step(
                Words.Of(
                    "sheet.feed.emitters",
                    Wording.Counted("sheet.count.hole", emitters),
                    _words.MarkWithUnit(parts.Emitter.Punch),
                    Wording.Counted("sheet.count.emitter", emitters),
                    parts.Emitter.Name,
                    feed.MicrotubeLength > 0
                        ? Words.Of("sheet.feed.emitters.tubes", _words.MarkWithUnit(feed.MicrotubeLength))
                        : ""
                ),
                Words.Of("sheet.feed.emitters.caution")
            );
        }

        Rest(flow);
        Hold(flow);
        var shut = rows.SelectMany(r => r.Emitters).Count(e => e.Open <= 0);
        if (shut > 0)
        {
            flow.Step(Words.Of("sheet.feed.shut", Wording.Counted("sheet.count.emitter", shut)));
        }

        if (feed.InlineValves)
        {
            flow.Step(Words.Of("sheet.feed.valves", _words.Share(feed.ValveOpen)));
        }

        flow.Step(Wording.Sentences(Entry(feed.Entry), Words.Of("sheet.feed.clamps")));
        if (feed.Entry is FeedEntry.End or FeedEntry.Middle)
        {
            flow.Step(Words.Of("sheet.feed.caps"));
        }
    }

    private void Rest(Flow flow)
    {
        if (PrintedSteps.Of(plan, PrintedKind.LineRest) is { Length: > 0 } rests)
        {
            flow.Step(Words.Of("sheet.feed.rests", rests));
        }
    }

    private void Hold(Flow flow)
    {
        if (PrintedSteps.Of(plan, PrintedKind.StakeHolder) is { Length: > 0 } holders)
        {
            flow.Step(Words.Of("sheet.feed.stakes", holders));
        }
    }

    private static string Entry(FeedEntry entry) =>
        entry switch
        {
            FeedEntry.Middle => Words.Of("sheet.feed.entry.middle"),
            FeedEntry.BothEnds => Words.Of("sheet.feed.entry.both"),
            FeedEntry.Loop => Words.Of("sheet.feed.entry.loop"),
            _ => Words.Of("sheet.feed.entry.end"),
        };
}
