using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Printed;

/// <summary>Which distances from hole to hole are worth a guide.</summary>
internal static class DrillGuides
{
    /// <summary>[m] Distances that differ by less are one: nobody drills finer.</summary>
    private const double Fine = 0.0001;

    public static SmallUse Of(RigLayout layout, PrintParameters start)
    {
        // Along the pipe: on a slope that is a little more than along the row. A hose is punched and needs no guide.
        List<(PipeRun Run, long Pitch, Hole From, Hole To)> steps = [];
        foreach (var run in layout.Rows.SelectMany(row => row.Feed.Append(row.Drain)).Where(run => !run.Pipe.Flexible))
        {
            foreach ((var from, var to) in run.Holes.Zip(run.Holes.Skip(1)))
            {
                // The guide lies on one piece of pipe: it reaches over no joint and no tee.
                if (run.Pieces.Any(piece => piece.From <= from.Station && to.Station <= piece.To))
                {
                    steps.Add((run, (long)Math.Round((to.Station - from.Station) * run.Stretch / Fine), from, to));
                }
            }
        }

        List<SmallPiece> pieces = [];
        foreach (
            var alike in steps
                .GroupBy(step => (step.Pitch, Pipe: step.Run.Pipe.Key, step.Run.Service))
                .Where(group => group.Count() > 1 || steps.Count == 1)
                .OrderByDescending(group => group.Count())
        )
        {
            (var run, var pitch, var _, var _) = alike.First();
            PipeRun[] runs = [.. alike.Select(step => step.Run).Distinct()];
            var feed = run.Service == RunService.Feed;
            var pipe = feed ? "feed" : "drain";
            var pipes =
                runs.Length == 1
                    ? Phrase.Of($"print.guide.{pipe}", run.Row)
                    : Phrase.Of($"print.guide.{pipe}s", runs.Length);
            var total = runs.Sum(one => one.Holes.Count - 1);
            var others = total - alike.Count();
            var along = Phrase.Of("print.use.guide", Measured.Length(pitch * Fine), pipes);
            pieces.Add(
                new(
                    start with
                    {
                        HolePitch = pitch * Fine,
                        PipeOutside = run.Pipe.OutsideDiameter,
                        PilotDrill = feed ? run.Holes[0].Diameter : start.PilotDrill,
                    },
                    1,
                    others == 0 ? along : Phrase.Of("print.use.guide.some", along, others, total),
                    [
                        .. alike
                            .SelectMany(step => new[] { (step.Run, step.From), (step.Run, step.To) })
                            .Distinct()
                            .Select(at => new PrintedSpot(at.Run.Row, at.Run.At(at.Item2.Station))),
                    ]
                )
            );
        }

        return pieces.Count > 0
            ? new(pieces, null)
            : SmallUse.None(
                "drillGuides",
                Phrase.Of("print.found.distances"),
                Phrase.Of("print.limit.distances"),
                Phrase.Of("print.remedy.strip")
            );
    }
}
