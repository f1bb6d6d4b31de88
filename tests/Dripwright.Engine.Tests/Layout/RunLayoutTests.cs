using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Layout;

public sealed class RunLayoutTests
{
    [Fact]
    public void Cut_pieces_and_laying_lengths_add_up_to_the_whole_run() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var run in TestRigs.Layout(rig).Runs)
            {
                // Walked from centre to centre, apart from the code that cuts.
                RunFitting[] cuts = [.. run.Fittings.Where(f => f.Interrupts)];
                var pieces = run.Pieces.Sum(p => p.Length);
                var laying = cuts.Sum(f =>
                    (f.Station > run.Start + 1e-9 ? f.Type.LayingLength : 0)
                    + (f.Station < run.End - 1e-9 ? f.Type.LayingLength : 0)
                );
                var rest = run.Length - pieces - laying;
                var most = OtherEnds(run).Sum();
                Assert.True(rest >= -1e-6 && rest <= most + 1e-6, Invariant($"{run.Label}: {rest} of {most}"));
            }
        });

    [Fact]
    public void No_piece_is_longer_than_its_stock_or_shorter_than_its_sockets() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var run in TestRigs.Layout(rig).Runs)
            {
                var stock = run.Pipe.Flexible ? run.Pipe.StockLengths.Max() : run.Pipe.StockLengths.Min();
                foreach (var piece in run.Pieces)
                {
                    Assert.InRange(piece.Length, 1e-6, stock + 1e-6);
                    Assert.Equal(piece.Length, (piece.To - piece.From) * run.Stretch, 1e-9);
                }
            }
        });

    [Fact]
    public void No_fitting_lies_on_another() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var run in TestRigs.Layout(rig).Runs)
            {
                for (var i = 1; i < run.Fittings.Count; i++)
                {
                    var apart = run.Fittings[i].Station - run.Fittings[i - 1].Station;
                    var least = run.Fittings[i].Reach + run.Fittings[i - 1].Reach;
                    Assert.True(
                        apart * run.Stretch >= least - 1e-6,
                        Invariant($"{run.Fittings[i - 1].Label} {run.Fittings[i].Label}: {apart} < {least}")
                    );
                }
            }
        });

    [Fact]
    public void Stations_rise_along_every_run() =>
        TestRigs.Any.Holds(rig =>
        {
            foreach (var run in TestRigs.Layout(rig).Runs)
            {
                AssertRises([run.Start, .. run.Fittings.Select(f => f.Station), run.End]);
                AssertRises([.. run.Holes.Select(h => h.Station)]);
                AssertRises([run.Start, .. run.Pieces.SelectMany(p => new[] { p.From, p.To }), run.End]);
                Assert.Equal(Enumerable.Range(1, run.Holes.Count), run.Holes.Select(h => h.Number));
            }
        });

    [Fact]
    public void Labels_of_runs_fittings_and_pieces_are_each_given_once() =>
        TestRigs.Any.Holds(rig =>
        {
            PipeRun[] runs = [.. TestRigs.Layout(rig).Runs];
            string[] labels =
            [
                .. runs.Select(r => r.Label),
                .. runs.SelectMany(r => r.Fittings).Select(f => f.Label),
                .. runs.SelectMany(r => r.Pieces).Select(p => p.Label),
            ];
            Assert.Equal(labels.Length, labels.Distinct().Count());
        });

    [Fact]
    public void Every_conflict_is_cured_by_its_shift() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            foreach (var conflict in layout.Conflicts.Where(c => c.Shift != 0))
            {
                var run = layout.Runs.Single(r => r.Label == conflict.Run);
                var joints = layout.Rows[run.Row - 1].Joints;
                var moved = conflict.Hole with { Station = conflict.Hole.Station + conflict.Shift };
                Assert.True(IsClear(run, joints, layout.Parts.Tube.Outside / 2, moved));
                // A tenth of a millimetre less does not do.
                var less = conflict.Shift - (Math.Sign(conflict.Shift) * 1e-4);
                var almost = conflict.Hole with { Station = conflict.Hole.Station + less };
                Assert.False(IsClear(run, joints, layout.Parts.Tube.Outside / 2, almost));
            }
        });

    [Fact]
    public void A_hole_is_in_conflict_exactly_when_something_lies_on_it() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            HashSet<(string, int)> found = [.. layout.Conflicts.Select(c => (c.Run, c.Hole.Number))];
            foreach (var run in layout.Runs.Where(r => r.Holes.Count > 0))
            {
                foreach (var hole in run.Holes)
                {
                    var clear = IsClear(run, layout.Rows[run.Row - 1].Joints, layout.Parts.Tube.Outside / 2, hole);
                    Assert.Equal(!clear, found.Contains((run.Label, hole.Number)));
                }
            }
        });

    [Fact]
    public void Couplings_lie_on_no_hole() =>
        TestRigs.Any.Holds(rig =>
        {
            var layout = TestRigs.Layout(rig);
            Assert.DoesNotContain(
                layout.Conflicts,
                c => c.With.Told().StartsWith("coupling", StringComparison.Ordinal) && c.Shift != 0
            );
        });

    [Fact]
    public void A_mirrored_rig_gives_a_mirrored_layout() =>
        TestRigs.Any.Holds(drawn =>
        {
            var left = drawn with
            {
                Reservoir = drawn.Reservoir with { At = RowEnd.Left },
                // Planting counts from the left, and an even staggered row has its back line at the other end.
                Rows = [.. drawn.Rows.Select(r => r with { Planting = null, Arrangement = Arrangement.Single })],
            };
            var right = left with { Reservoir = left.Reservoir with { At = RowEnd.Right } };
            var a = TestRigs.Layout(left);
            var b = TestRigs.Layout(right);
            var width = a.Rows.Max(r => r.Length);
            PipeRun[] others = [.. b.Runs];
            foreach (var run in a.Runs)
            {
                // A loop's emitters take its legs in turn, counted from the left, and couplings give way to them.
                if (left.Feed.Entry == FeedEntry.Loop && run.Service == RunService.Feed)
                {
                    continue;
                }

                var name = run.Label.Replace("Vl", "V?", StringComparison.Ordinal);
                var other = others.Single(r =>
                    r.Label == run.Label.Replace("Vl", "V?").Replace("Vr", "Vl").Replace("V?", "Vr")
                );
                var alongRow = run.Row > 0 && run.Path[0].Z == run.Path[^1].Z || run.Label[0] is 'D' or 'R';
                double[] from = [.. run.Fittings.Select(f => f.Station)];
                double[] to = [.. other.Fittings.Select(f => f.Station)];
                if (alongRow && run.Label[^1] is not ('n' or 'f'))
                {
                    var length = a.Rows[run.Row - 1].Length;
                    to = [.. to.Reverse().Select(s => length - s)];
                }

                Assert.Equal(from.Length, to.Length);
                for (var i = 0; i < from.Length; i++)
                {
                    Assert.True(Math.Abs(from[i] - to[i]) < 1e-6, Invariant($"{name} {from[i]} {to[i]}"));
                }

                Assert.Equal(run.Pieces.Sum(p => p.Length), other.Pieces.Sum(p => p.Length), 1e-6);
            }

            Assert.Equal(a.Tank.Mouth.X, width - b.Tank.Mouth.X, 1e-9);
            Assert.Equal(a.Tank.Left, width - b.Tank.Right, 1e-9);
            Assert.Equal(a.LengthUsed, b.LengthUsed, 1e-9);
            Assert.Equal(a.Stand.Members.Sum(m => m.Length), b.Stand.Members.Sum(m => m.Length), 1e-6);
        });

    /// <summary>Laying lengths that fittings of other runs may take at this run's ends.</summary>
    private static IEnumerable<double> OtherEnds(PipeRun run)
    {
        var closedStart = run.Fittings.Any(f => f.Station < run.Start + 1e-9);
        var closedEnd = run.Fittings.Any(f => f.Station > run.End - 1e-9);
        var longest = PartsCatalogue
            .Default.Fittings.Values.Where(f => f.Family == run.Pipe.Family && f.Nominal == run.Pipe.Nominal)
            .Where(f => f.Kind is FittingKind.Elbow90 or FittingKind.Tee)
            .Max(f => f.LayingLength);
        yield return closedStart ? 0 : longest;
        yield return closedEnd ? 0 : longest;
    }

    private static bool IsClear(PipeRun run, IReadOnlyList<double> joints, double jointHalf, Hole hole)
    {
        var radius = hole.Diameter / 2;
        bool Apart(double station, double half) => Math.Abs(hole.Station - station) >= half + radius - 1e-6;
        return hole.Station >= run.Start + radius - 1e-6
            && hole.Station <= run.End - radius + 1e-6
            && run.Fittings.All(f => Apart(f.Station, f.Type.LayingLength + f.Type.SocketDepth))
            && joints.All(j => Apart(j, jointHalf))
            && run.Holes.All(h => h.Number == hole.Number || Apart(h.Station, h.Diameter / 2));
    }

    private static void AssertRises(double[] stations)
    {
        for (var i = 1; i < stations.Length; i++)
        {
            Assert.True(stations[i] >= stations[i - 1] - 1e-9);
        }
    }
}
