using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Marks every hole on the piece of pipe it falls on, after cutting.</summary>
/// <remarks>Method page: docs/methods/holes.md</remarks>
internal static class HoleMarks
{
    /// <summary>Marks of every run, and what could not be marked.</summary>
    public static (List<HoleMark> Marks, List<CutTrouble> Troubles) Of(Rig rig, RigLayout layout)
    {
        List<HoleMark> marks = [];
        List<CutTrouble> troubles = [];
        foreach (var run in layout.Runs.Where(r => r.Holes.Count > 0))
        {
            Mark(rig, run, marks, troubles);
        }

        return (marks, troubles);
    }

    /// <summary>Holes in the pots, one entry for each kind of pot.</summary>
    public static IReadOnlyList<PotHole> InPots(RigLayout layout)
    {
        var outlet = layout.Parts.Outlet;
        var tool = HoleTool.For(outlet.PotHole, HoleUse.PotOutlet, false);
        return
        [
            .. layout
                .Rows.GroupBy(r => r.Pot.Key)
                .Select(g => new PotHole(
                    g.Key,
                    g.Sum(r => r.Pots.Count),
                    // The sill is the lowest point of the bore, and the hole is round the same centre.
                    g.First().Pot.DrainHeight + (outlet.Bore / 2),
                    outlet.PotHole,
                    tool
                )),
        ];
    }

    private static void Mark(Rig rig, PipeRun run, List<HoleMark> marks, List<CutTrouble> troubles)
    {
        var piece = 0;
        double last = 0;
        foreach (var hole in run.Holes)
        {
            while (piece < run.Pieces.Count && hole.Station > run.Pieces[piece].To)
            {
                piece++;
                last = 0;
            }

            if (piece == run.Pieces.Count || hole.Station < run.Pieces[piece].From)
            {
                troubles.Add(
                    new CutTrouble(
                        Place.OfHole(run.Label, hole.Number, run.Row, hole.Pot),
                        Phrase.Of("cut.hole-unmarked", hole.Number, run.Label)
                    )
                );
                continue;
            }

            var fromEnd = (hole.Station - run.Pieces[piece].From) * run.Stretch;
            marks.Add(
                new HoleMark(
                    run.Pieces[piece].Label,
                    run.Label,
                    hole.Number,
                    fromEnd,
                    fromEnd - last,
                    hole.Diameter,
                    HoleTool.For(hole.Diameter, hole.Use, run.Pipe.Flexible),
                    FaceOf(hole, rig.Feed),
                    hole.Pot,
                    run.Row
                )
            );
            last = fromEnd;
        }
    }

    // Tubes leave from the top, where no dirt settles; an emitter without a tube must hang to drip.
    private static HoleFace FaceOf(Hole hole, Feed feed) =>
        hole.Use switch
        {
            HoleUse.SiphonBreak => HoleFace.SideOverWater,
            HoleUse.Emitter when feed.MicrotubeLength <= 0 => HoleFace.Underside,
            _ => HoleFace.Top,
        };
}
