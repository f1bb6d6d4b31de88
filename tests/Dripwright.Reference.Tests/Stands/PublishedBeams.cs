using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>Beam and column formulas of the handbooks, in newtons and millimetres on a 1 in × 0.065 in tube.</summary>
public sealed class PublishedBeams
{
    private const double Length = 1500;
    private const double W = 0.2;
    private const double P = 200;
    private static readonly SectionProperties s_tube = TubeSection.OfRoundTube(25.4, 1.651).Properties.WithoutShear();
    private static readonly Steel s_steel = Bench.Steel(200_000, 77_000);
    private static readonly double s_ei = 200_000 * s_tube.InertiaY;
    private const Held Hinge = Held.Pin | Held.TurnX;

    // AISC beam formulas, 2005: simple beam wl²/8, 5wl⁴/384EI; fixed ends wl²/12, wl²/24, wl⁴/384EI.
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Even_load_on_two_hinges(int parts)
    {
        var model = Bench.Line(Length, parts, s_tube, s_steel, Hinge, Hinge);

        var s = Bench.Solve(model, Bench.Even(model, new Vector3(0, 0, -W)));

        var (e, x) = Middle(parts);
        Assert.Equal(W * Length * Length / 8, Math.Abs(s.At(e, x).MomentY), 1e-6 * 56_250);
        Assert.Equal(-5 * W * Math.Pow(Length, 4) / (384 * s_ei), s.ShiftAt(e, x).Z, 1e-6);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Even_load_between_fixed_ends(int parts)
    {
        var model = Bench.Line(Length, parts, s_tube, s_steel, Held.Fixed, Held.Fixed);

        var s = Bench.Solve(model, Bench.Even(model, new Vector3(0, 0, -W)));

        var (e, x) = Middle(parts);
        Assert.Equal(W * Length * Length / 12, Math.Abs(s.At(0, 0).MomentY), 0.04);
        Assert.Equal(W * Length * Length / 24, Math.Abs(s.At(e, x).MomentY), 0.04);
        Assert.Equal(-W * Math.Pow(Length, 4) / (384 * s_ei), s.ShiftAt(e, x).Z, 1e-6);
    }

    // AISC: Pl/4, Pl³/48EI on hinges; Pl/8, Pl³/192EI between fixed ends.
    [Theory]
    [InlineData(Hinge, 4, 48)]
    [InlineData(Held.Fixed, 8, 192)]
    public void A_load_in_the_middle(Held ends, double momentShare, double shiftShare)
    {
        var model = Bench.Line(Length, 1, s_tube, s_steel, ends, ends);

        var s = Bench.Solve(model, new() { Points = [new PointLoad(0, Length / 2, new Vector3(0, -P, 0))] });

        Assert.Equal(P * Length / momentShare, Math.Abs(s.At(0, Length / 2).MomentZ), 0.1);
        Assert.Equal(-P * Math.Pow(Length, 3) / (shiftShare * s_ei), s.ShiftAt(0, Length / 2).Y, 1e-6);
    }

    // Cantilever: Pl³/3EI, wl⁴/8EI (from memory; any handbook).
    [Fact]
    public void A_cantilever_of_400_mm()
    {
        var model = Bench.Line(400, 1, s_tube, s_steel, Held.Fixed, Held.None);

        var point = Bench.Solve(model, new() { Nodes = [new NodeLoad(1, new Vector3(0, 0, -P))] });
        var even = Bench.Solve(model, Bench.Even(model, new Vector3(0, 0, -W)));

        Assert.Equal(-P * Math.Pow(400, 3) / (3 * s_ei), point.Shift(1).Z, 1e-6);
        Assert.Equal(-W * Math.Pow(400, 4) / (8 * s_ei), even.Shift(1).Z, 1e-6);
    }

    // Lindeburg, Civil Engineering Reference Manual, 15th ed.: two equal spans, R = 3/8, 10/8, M = -wl²/8 and 9wl²/128,
    // d = 0.00541 wl⁴/EI at 0.4215 l.
    [Fact]
    public void Two_equal_spans()
    {
        var model = Bench.Line(2 * Length, 2, s_tube, s_steel, Hinge, Hinge, middle: Held.Pin);

        var s = Bench.Solve(model, Bench.Even(model, new Vector3(0, 0, -W)));

        Assert.Equal(3.0 / 8, s.Reaction(0).Force.Z / (W * Length), 1e-9);
        Assert.Equal(10.0 / 8, s.Reaction(1).Force.Z / (W * Length), 1e-9);
        Assert.Equal(1.0 / 8, Math.Abs(s.At(0, Length).MomentY) / (W * Length * Length), 1e-9);
        Assert.Equal(9.0 / 128, Math.Abs(s.At(0, 0.375 * Length).MomentY) / (W * Length * Length), 1e-9);
        Assert.Equal(0.00541, -s.ShiftAt(0, 0.4215 * Length).Z * s_ei / (W * Math.Pow(Length, 4)), 1e-5);
    }

    // End moment of a beam on equal rotational springs k: wl²/12/(1 + 2a), a = EI/(kl); after Monforton and Wu's fixity
    // factors as quoted in a public timber design note.
    [Theory]
    [InlineData(1.0 / 3)]
    [InlineData(1)]
    [InlineData(10)]
    public void Ends_that_give(double a)
    {
        var ends = new EndStiffness(s_ei / (a * Length), double.PositiveInfinity);
        var model = Bench.Line(Length, 1, s_tube, s_steel, Held.Fixed, Held.Fixed, ends);

        var s = Bench.Solve(model, Bench.Even(model, new Vector3(0, 0, -W)));

        var end = W * Length * Length / 12 / (1 + (2 * a));
        var middle = (W * Length * Length / 8) - end;
        var sag = (5 * W * Math.Pow(Length, 4) / (384 * s_ei)) - (end * Length * Length / (8 * s_ei));
        Assert.Equal(end, Math.Abs(s.At(0, 0).MomentY), 1e-6 * end);
        Assert.Equal(middle, Math.Abs(s.At(0, Length / 2).MomentY), 1e-6 * middle);
        Assert.Equal(-sag, s.ShiftAt(0, Length / 2).Z, 1e-8);
    }

    // Euler's columns, ideal effective length factors 0.5, 0.7, 1 and 2 as printed in handbooks (0.699 to more digits).
    [Theory]
    [InlineData(Held.Fixed, Held.Fixed, 0.5, 0.002)]
    [InlineData(Held.Fixed, Hinge, 0.7, 0.005)]
    [InlineData(Hinge, Hinge, 1, 0.002)]
    [InlineData(Held.Fixed, Held.None, 2, 0.002)]
    public void Columns_buckle_at_eulers_load(Held foot, Held head, double k, double tolerance)
    {
        const double Tall = 1000;
        var model = Bench.Line(Tall, 8, s_tube, s_steel, foot, head & ~Held.X);
        var solver = new FrameSolver(model);
        var s = Assert.IsType<FrameSolution>(solver.Solve(new() { Nodes = [new NodeLoad(8, new Vector3(-1, 0, 0))] }));

        var buckling = solver.Buckling(s);

        var euler = Math.PI * Math.PI * s_ei / (k * k * Tall * Tall);
        Assert.NotNull(buckling);
        Assert.True(buckling.Proven);
        Assert.Equal(euler, buckling.Factor, tolerance * euler * 2);
    }

    private static (int Element, double X) Middle(int parts) =>
        parts == 1 ? (0, Length / 2) : ((parts / 2) - 1, Length / parts);
}
