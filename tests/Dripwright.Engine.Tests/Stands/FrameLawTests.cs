using CsCheck;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using MathNet.Numerics.LinearAlgebra;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Laws that every frame keeps.</summary>
public sealed class FrameLawTests
{
    [Fact]
    public void Supports_carry_exactly_what_is_put_on() =>
        TestFrames.Any.Holds(
            t =>
            {
                var s = Solved(t.Model, t.Loading);
                Vector3 force = default;
                Vector3 moment = default;
                double size = 0;
                double turning = 0;
                void Add(Vector3 f, Vector3 at, Vector3 m = default)
                {
                    var arm = new Vector3(at.X, at.Y, at.Z);
                    force += f;
                    moment += arm.Cross(f) + m;
                    size += f.Length;
                    turning += f.Length * arm.Length + m.Length;
                }

                for (var n = 0; n < t.Model.Nodes.Count; n++)
                {
                    var (f, m) = s.Reaction(n);
                    Add(f, t.Model.Nodes[n].At, m);
                }

                foreach (var load in t.Loading.Nodes)
                {
                    Add(load.Force, t.Model.Nodes[load.Node].At, load.Moment);
                }

                foreach (var load in t.Loading.Points)
                {
                    Add(load.Force, Place(t.Model, load.Element, load.At));
                }

                foreach (var load in t.Loading.Lines)
                {
                    var length = t.Model.LengthOf(load.Element);
                    Add(length * load.PerMetre, Place(t.Model, load.Element, length / 2));
                }

                Assert.True(force.Length <= 1e-9 * size, FormattableString.Invariant($"{force.Length / size:E1}"));
                Assert.True(
                    moment.Length <= 1e-9 * turning,
                    FormattableString.Invariant($"{moment.Length / turning:E1}")
                );
            },
            iter: 200
        );

    [Fact]
    public void A_load_here_moves_there_as_a_load_there_moves_here() =>
        TestFrames.Any.Holds(
            t =>
            {
                var a = 2;
                var b = t.Model.Nodes.Count - 1;
                var one = new Vector3(1, 2, -3);
                var two = new Vector3(-2, 1, 0.5);
                var first = Solved(t.Model, new() { Nodes = [new NodeLoad(a, one)] });
                var second = Solved(t.Model, new() { Nodes = [new NodeLoad(b, default, two)] });

                var there = first.Turn(b).Dot(two);
                var here = second.Shift(a).Dot(one);

                var scale = first.Turn(b).Length * two.Length + 1e-12;
                Assert.Equal(there, here, 1e-8 * scale);
            },
            iter: 200
        );

    [Fact]
    public void Loads_add_up() =>
        TestFrames.Any.Holds(
            t =>
            {
                var points = t.Loading with { Lines = [], Nodes = [] };
                var rest = t.Loading with { Points = [] };
                var solver = new FrameSolver(t.Model);
                var a = (FrameSolution)solver.Solve(points);
                var b = (FrameSolution)solver.Solve(rest);
                var both = (FrameSolution)solver.Solve(points.Times(2).And(rest));

                for (var n = 0; n < t.Model.Nodes.Count; n++)
                {
                    Near(2 * a.Shift(n) + b.Shift(n), both.Shift(n), 1e-9 * Largest(t.Model, both));
                }
            },
            iter: 200
        );

    [Fact]
    public void Turning_the_whole_stand_about_the_plumb_line_changes_nothing() =>
        TestFrames.Any.Holds(
            t =>
            {
                const double Angle = 0.7;
                Vector3 turn(Vector3 v) =>
                    new(
                        Math.Cos(Angle) * v.X - Math.Sin(Angle) * v.Y,
                        Math.Sin(Angle) * v.X + Math.Cos(Angle) * v.Y,
                        v.Z
                    );
                var round = Round(t.Model);
                FrameNode[] nodes =
                [
                    .. round.Nodes.Select(n =>
                    {
                        var at = turn(new Vector3(n.At.X, n.At.Y, n.At.Z));
                        return n with { At = new Vector3(at.X, at.Y, at.Z) };
                    }),
                ];
                var turned = new FrameModel(nodes, round.Elements);
                FrameLoading loading = new()
                {
                    Nodes = [.. t.Loading.Nodes.Select(l => l with { Force = turn(l.Force), Moment = turn(l.Moment) })],
                    Points = [.. t.Loading.Points.Select(l => l with { Force = turn(l.Force) })],
                    Lines = [.. t.Loading.Lines.Select(l => l with { PerMetre = turn(l.PerMetre) })],
                };
                var options = new FrameOptions { SecondOrder = true };
                var before = new FrameSolver(round).Solve(t.Loading, options);
                var after = new FrameSolver(turned).Solve(loading, options);

                Assert.Equal(before.GetType(), after.GetType());
                if (before is FrameSolution s && after is FrameSolution r)
                {
                    for (var n = 0; n < nodes.Length; n++)
                    {
                        Near(turn(s.Shift(n)), r.Shift(n), 1e-7 * Largest(round, s));
                    }
                }
            },
            iter: 200
        );

    [Fact]
    public void A_finer_mesh_changes_nothing_at_the_nodes() =>
        TestFrames.Any.Holds(
            t =>
            {
                var round = Round(t.Model);
                var loads = t.Loading with { Points = [] };
                var coarse = Solved(round, loads);
                var (fine, lines) = Split(round, loads, 3);
                var s = Solved(fine, lines);

                for (var n = 0; n < round.Nodes.Count; n++)
                {
                    Near(coarse.Shift(n), s.Shift(n), 1e-8 * Largest(round, coarse));
                }

                // The shape between the nodes is the true one as well: the first new node lies on it.
                var third = round.LengthOf(0) / 3;
                Near(coarse.ShiftAt(0, third), s.Shift(round.Nodes.Count), 1e-8 * Largest(round, coarse));
            },
            iter: 100
        );

    [Fact]
    public void A_symmetric_table_settles_evenly()
    {
        var model = TestFrames.Table(2, 1, 0.4, 0.7, TestFrames.Tube.Properties, new EndStiffness(800, 0));
        var lines = Enumerable.Range(0, model.Elements.Count).Select(e => new LineLoad(e, new Vector3(0, 0, -100)));

        var s = Solved(model, new() { Lines = [.. lines] });

        Near(s.Shift(2) - s.Shift(10), new Vector3(2 * s.Shift(2).X, 0, 0), 1e-12);
        Near(s.Shift(2) - s.Shift(3), new Vector3(0, 2 * s.Shift(2).Y, 0), 1e-12);
        Assert.Equal(s.Reaction(0).Force.Z, s.Reaction(9).Force.Z, 1e-9);
    }

    [Fact]
    public void The_sparse_answer_is_that_of_a_dense_solver() =>
        TestFrames.Any.Holds(
            t =>
            {
                var solver = new FrameSolver(t.Model);
                var s = (FrameSolution)solver.Solve(t.Loading);
                var n = 6 * t.Model.Nodes.Count;
                int[] free =
                [
                    .. Enumerable.Range(0, n).Where(i => ((int)t.Model.Nodes[i / 6].Held >> (i % 6) & 1) == 0),
                ];
                var k = Matrix<double>.Build.Dense(free.Length, free.Length);
                for (var j = 0; j < free.Length; j++)
                {
                    var unit = new double[n];
                    var column = new double[n];
                    unit[free[j]] = 1;
                    solver.Matrix.AddElastic(unit, column);
                    for (var i = 0; i < free.Length; i++)
                    {
                        k[i, j] = column[free[i]];
                    }
                }

                var loads = new ElementLoads(t.Model, solver.Matrix.Elements, t.Loading).Rows(new bool[n]);
                var x = k.LU().Solve(Vector<double>.Build.Dense(free.Length, i => loads[free[i]]));

                var scale = x.AbsoluteMaximum();
                for (var i = 0; i < free.Length; i++)
                {
                    var node = free[i] / 6;
                    var (shift, turn) = (s.Shift(node), s.Turn(node));
                    var ours = (free[i] % 6) switch
                    {
                        0 => shift.X,
                        1 => shift.Y,
                        2 => shift.Z,
                        3 => turn.X,
                        4 => turn.Y,
                        _ => turn.Z,
                    };
                    Assert.Equal(x[i], ours, 1e-8 * scale);
                }
            },
            iter: 100
        );

    [Fact]
    public void The_buckling_factor_is_where_second_order_stops_having_an_answer() =>
        TestFrames.Any.Holds(
            t =>
            {
                var solver = new FrameSolver(t.Model);
                var loads = new FrameLoading
                {
                    Nodes =
                    [
                        .. Enumerable
                            .Range(0, t.Model.Nodes.Count)
                            .Where(n => n % 4 > 1)
                            .Select(n => new NodeLoad(n, new Vector3(0, 0, -500))),
                    ],
                };
                var s = (FrameSolution)solver.Solve(loads);
                var buckling = solver.Buckling(s)!;

                Assert.True(buckling.Proven);
                bool[] held =
                [
                    .. Enumerable
                        .Range(0, 6 * t.Model.Nodes.Count)
                        .Select(i => ((int)t.Model.Nodes[i / 6].Held >> (i % 6) & 1) == 1),
                ];
                Assert.True(solver.Matrix.TryFactor(held, [.. s.Tensions.Select(n => n * buckling.Factor * 0.999)]));
                Assert.False(solver.Matrix.TryFactor(held, [.. s.Tensions.Select(n => n * buckling.Factor * 1.001)]));
            },
            iter: 100
        );

    [Fact]
    public void A_frame_proven_under_heavier_loads_gives_the_same_second_order_answer_without_a_new_factorisation() =>
        TestFrames.Any.Holds(
            t =>
            {
                var solver = new FrameSolver(t.Model);
                var first = (FrameSolution)solver.Solve(t.Loading);
                var most = first.Tensions.Max(Math.Abs);
                double[] heavy = [.. first.Tensions.Select(n => (4 * Math.Min(0, n)) - (0.05 * most))];
                if (solver.Prove(heavy, [first]) is not { } proof)
                {
                    return;
                }

                var options = new FrameOptions { SecondOrder = true, AxialFactor = 1.6 };
                var quick = (FrameSolution)solver.SecondOrder([first], options, proof)[0];
                var plain = (FrameSolution)solver.Solve(t.Loading, options);

                // The plain way stops when axial forces rest within 1e-4.
                var largest = Largest(t.Model, plain);
                for (var n = 0; n < t.Model.Nodes.Count; n++)
                {
                    Near(plain.Shift(n), quick.Shift(n), 1e-4 * largest);
                    Near(plain.Reaction(n).Force, quick.Reaction(n).Force, 1e-4 * most);
                }
            },
            iter: 200
        );

    private static FrameSolution Solved(FrameModel model, FrameLoading loading) =>
        Assert.IsType<FrameSolution>(new FrameSolver(model).Solve(loading));

    private static Vector3 Place(FrameModel model, int element, double x)
    {
        var a = model.Nodes[model.Elements[element].From].At;
        var way = Vector3.Between(a, model.Nodes[model.Elements[element].To].At);
        var off = x / way.Length * way;
        return new Vector3(a.X + off.X, a.Y + off.Y, a.Z + off.Z);
    }

    // A round tube has no preferred axes, so the frame may be turned and divided without turning its sections.
    private static FrameModel Round(FrameModel model) =>
        new(
            model.Nodes,
            [
                .. model.Elements.Select(e =>
                    e with
                    {
                        Section = TestFrames.Tube.Properties,
                        // A tube that spins at both ends would be loose at nodes within it.
                        Start = e.Start with
                        {
                            Twist = Math.Max(e.Start.Twist, 10),
                        },
                    }
                ),
            ]
        );

    private static (FrameModel, FrameLoading) Split(FrameModel model, FrameLoading loading, int parts)
    {
        List<FrameNode> nodes = [.. model.Nodes];
        List<FrameElement> elements = [];
        List<LineLoad> lines = [];
        for (var e = 0; e < model.Elements.Count; e++)
        {
            var element = model.Elements[e];
            var from = element.From;
            for (var k = 1; k <= parts; k++)
            {
                var last = k == parts;
                var to = last ? element.To : nodes.Count;
                if (!last)
                {
                    nodes.Add(new FrameNode("between", Place(model, e, model.LengthOf(e) * k / parts)));
                }

                lines.Add(new LineLoad(elements.Count, loading.Lines[e].PerMetre));
                elements.Add(
                    element with
                    {
                        From = from,
                        To = to,
                        Start = k == 1 ? element.Start : EndStiffness.Rigid,
                        End = last ? element.End : EndStiffness.Rigid,
                    }
                );
                from = to;
            }
        }

        return (new FrameModel(nodes, elements), loading with { Lines = lines });
    }

    private static double Largest(FrameModel model, FrameSolution s) =>
        Enumerable.Range(0, model.Nodes.Count).Max(n => s.Shift(n).Length);

    private static void Near(Vector3 expected, Vector3 actual, double tolerance) =>
        Assert.True(
            (expected - actual).Length <= tolerance,
            FormattableString.Invariant($"{(expected - actual).Length:E2} > {tolerance:E2}")
        );
}
