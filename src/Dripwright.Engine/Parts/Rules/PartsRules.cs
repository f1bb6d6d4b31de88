using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>Judges parts and cuts.</summary>
internal sealed class PartsRules(RigLayout layout, PartsPlan parts, Judgement judge)
{
    public void Judge()
    {
        Cuts();
        Kerf();
        Clamps();
        var lines = parts.Lines.Count(l => l.Buy > 0);
        if (lines > 0)
        {
            judge.Add(
                "parts-short",
                [Place.Of("place.parts")],
                ["onHand"],
                Phrase.Counted("finding.parts-short.what", lines),
                Phrase.Counted("count.items", lines),
                Limit.None,
                Phrase.Of("finding.parts-short.remedy")
            );
        }
    }

    private void Cuts()
    {
        foreach (var trouble in parts.CutTroubles)
        {
            judge.Add(
                "cut-impossible",
                [trouble.Where],
                ["onHand"],
                trouble.What,
                Phrase.Of("finding.cut-impossible.value"),
                Phrase.Of("finding.cut-impossible.limit"),
                Phrase.Of("finding.cut-impossible.remedy")
            );
        }
    }

    private void Kerf()
    {
        foreach (var cut in parts.Cuts)
        {
            foreach (var trap in cut.KerfTraps)
            {
                judge.Add(
                    "kerf-trap",
                    [new Place(Phrase.Plain(cut.Material))],
                    ["rows[0].moduleLength", "stand.sawCut"],
                    Phrase.Of(
                        "finding.kerf-trap.what",
                        Measured.Length(trap.StockLength),
                        trap.WithKerf,
                        Measured.Length(trap.PieceLength),
                        trap.WithoutKerf
                    ),
                    Phrase.Counted("count.pieces", trap.WithKerf),
                    Phrase.Counted("count.pieces", trap.WithoutKerf),
                    // Rounded up, so that what is read gives the piece back.
                    Phrase.Of("finding.kerf-trap.remedy", Measured.Shift(trap.ShortenBy))
                );
            }
        }
    }

    private void Clamps()
    {
        List<Place> bare =
        [
            .. layout
                .Runs.Where(r => r.Pipe.Family is PipeFamily.HoseInch or PipeFamily.HoseMetric)
                .SelectMany(r => r.Fittings.Where(f => f.Type.Clamps == 0 && f.Interrupts), Barb),
        ];
        if (bare.Count > 0)
        {
            judge.Add(
                "barb-unclamped",
                bare,
                ["feed.line"],
                Phrase.Counted("finding.barb-unclamped.what", bare.Count),
                Phrase.Of("finding.barb-unclamped.value"),
                Phrase.Of("finding.barb-unclamped.limit"),
                Phrase.Of("finding.barb-unclamped.remedy")
            );
        }
    }

    private static Place Barb(PipeRun run, RunFitting fitting) =>
        new(Phrase.Plain(fitting.Label), run.Row, Run: run.Label);
}
