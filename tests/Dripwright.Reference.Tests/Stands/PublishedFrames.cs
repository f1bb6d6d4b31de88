using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>Frames with published answers.</summary>
public sealed class PublishedFrames
{
    private const Held Plane = Held.Z | Held.TurnX | Held.TurnY;

    // Logan, A First Course in the Finite Element Method, 4th ed., example 5.1 (inches, pounds): printed forces
    // rounded to three or four digits.
    [Fact]
    public void Logans_portal()
    {
        var steel = Bench.Steel(30e6, 12e6);
        var columns = Bench.Section(10, 200);
        var beam = Bench.Section(10, 100);
        var model = Frame(
            [(0, 0, Held.Fixed), (0, 120, Plane), (120, 120, Plane), (120, 0, Held.Fixed)],
            [(0, 1, columns), (1, 2, beam), (2, 3, columns)],
            steel
        );

        var s = Bench.Solve(
            model,
            new()
            {
                Nodes =
                [
                    new NodeLoad(1, new Vector3(10_000, 0, 0)),
                    new NodeLoad(2, default, new Vector3(0, 0, 5_000)),
                ],
            }
        );

        Assert.Equal(3_700, Math.Abs(s.At(0, 0).Axial), 18.5);
        Assert.Equal(4_990, Shear(s.At(0, 0)), 25.0);
        Assert.Equal(376_000, Moment(s.At(0, 0)), 1_880.0);
        Assert.Equal(223_000, Moment(s.At(0, 120)), 1_115.0);
        Assert.Equal(221_000, Moment(s.At(1, 120)), 1_105.0);
        Assert.Equal(5_010, Shear(s.At(2, 0)), 25.0);
        Assert.Equal(226_000, Moment(s.At(2, 0)), 1_130.0);
        Assert.Equal(375_000, Moment(s.At(2, 120)), 1_875.0);
    }

    // Logan, problem 5.30 as transcribed in the test collection of a public frame program (inches, kips).
    [Fact]
    public void Logans_gable()
    {
        var steel = Bench.Steel(30_000, 12_000);
        var section = Bench.Section(12, 200);
        var model = Frame(
            [
                (0, 0, Held.Fixed),
                (0, 360, Plane),
                (180, 480, Plane),
                (420, 480, Plane),
                (600, 360, Plane),
                (600, 0, Held.Fixed),
            ],
            [(0, 1, section), (1, 2, section), (2, 3, section), (3, 4, section), (4, 5, section)],
            steel
        );

        var s = Bench.Solve(
            model,
            new() { Nodes = [new NodeLoad(2, new Vector3(0, -30, 0)), new NodeLoad(3, new Vector3(0, -30, 0))] }
        );

        Assert.Equal(11.6877, s.Reaction(0).Force.X, 0.00005);
        Assert.Equal(30, s.Reaction(0).Force.Y, 1e-9);
        Assert.Equal(1810.0745, Math.Abs(s.Reaction(0).Moment.Z), 0.00006);
        Assert.Equal(-6.666757, s.Shift(2).Y, 0.0000006);
        Assert.Equal(0.032, Math.Abs(s.Turn(2).Z), 0.0005);
    }

    // AISC 360 commentary C2, benchmark problems, shear left out: W14x48, I 484 in⁴, E 29,000 ksi, L 28 ft.
    [Theory]
    [InlineData(0, 235, 0.197)]
    [InlineData(150, 269, 0.224)]
    [InlineData(300, 313, 0.261)]
    [InlineData(450, 375, 0.311)]
    public void Second_order_of_a_pinned_column_with_side_load(double press, double moment, double shift)
    {
        const double Tall = 336;
        var model = Bench.Line(
            Tall,
            4,
            Bench.Section(1e4, 484),
            Bench.Steel(29_000, 11_200),
            Held.Pin | Held.TurnX,
            Held.Y | Held.Z | Held.TurnX
        );
        var loading = Bench.Even(model, new Vector3(0, 0.2 / 12, 0)) with
        {
            Nodes = [new NodeLoad(4, new Vector3(-press, 0, 0))],
        };

        var s = Bench.Solve(model, loading, new() { SecondOrder = true });

        // One per cent with four elements, as the commentary expects of a second-order method.
        Assert.Equal(moment, Moment(s.At(1, Tall / 4)), 0.01 * moment);
        Assert.Equal(shift, s.Shift(2).Y, 0.01 * shift);
    }

    [Theory]
    [InlineData(0, 336, 0.901)]
    [InlineData(100, 469, 1.33)]
    [InlineData(150, 598, 1.75)]
    [InlineData(200, 848, 2.56)]
    public void Second_order_of_a_cantilever_column(double press, double moment, double shift)
    {
        const double Tall = 336;
        var model = Bench.Line(Tall, 4, Bench.Section(1e4, 484), Bench.Steel(29_000, 11_200), Held.Fixed, Held.None);

        var s = Bench.Solve(
            model,
            new() { Nodes = [new NodeLoad(4, new Vector3(-press, 0, 1))] },
            new() { SecondOrder = true }
        );

        Assert.Equal(moment, Moment(s.At(0, 0)), 0.01 * moment);
        Assert.Equal(shift, s.Shift(4).Z, 0.01 * shift);
    }

    // Frame3DD, example B, load case 1, as printed in its published output (mm, N, tonne): shear, geometric stiffness and
    // self-weight on.
    [Fact]
    public void The_pyramid_of_a_published_frame_program()
    {
        SectionProperties section = new(36, 492, 492, 1, 1, 1000, 20, 20, false);
        var steel = Bench.Steel(200_000, 79_300);
        (double X, double Y)[] feet = [(-1200, -900), (1200, -900), (1200, 900), (-1200, 900)];
        FrameNode[] nodes =
        [
            new("apex", new Vector3(0, 0, 1000)),
            .. feet.Select(f => new FrameNode("foot", new Vector3(f.X, f.Y, 0), Held.Fixed)),
        ];
        FrameElement[] elements =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(i => new FrameElement("e", i, 0, section, steel, EndStiffness.Rigid, EndStiffness.Rigid)),
        ];
        var model = new FrameModel(nodes, elements);
        var loading = Bench.Even(model, new Vector3(0, 0, -7.85e-9 * 9806.33 * 36)) with
        {
            Nodes = [new NodeLoad(0, new Vector3(100, -200, -100))],
        };

        var s = Bench.Solve(model, loading, new() { SecondOrder = true });

        Assert.Equal(0.014127, s.Shift(0).X, 0.0000011);
        Assert.Equal(-0.050229, s.Shift(0).Y, 0.0000006);
        Assert.Equal(-0.022374, s.Shift(0).Z, 0.0000006);
        Assert.Equal(3.7e-5, s.Turn(0).X, 0.06e-5);
        Assert.Equal(9e-6, s.Turn(0).Y, 0.6e-6);
        var (force, turning) = s.Reaction(1);
        Assert.Equal(74.653, force.X, 0.0006);
        Assert.Equal(55.994, force.Y, 0.0006);
        Assert.Equal(64.715, force.Z, 0.0006);
        Assert.Equal(373.079, turning.X, 0.01);
        Assert.Equal(-504.802, turning.Y, 0.01);
    }

    // Kleinlogel's fixed portal (from memory): base Ph/2·(3k+1)/(6k+1), corner Ph/2·3k/(6k+1), sway Ph³/12EI·(3k+2)/(6k+1).
    [Fact]
    public void Kleinlogels_portal()
    {
        const double H = 1000;
        const double P = 100;
        var tube = TubeSection.OfRoundTube(25.4, 1.651).Properties.WithoutShear();
        // The formula leaves out stretching: the area is made large.
        var stiff = tube with
        {
            Area = tube.Area * 1e5,
        };
        var model = Frame(
            [(0, 0, Held.Fixed), (0, H, Plane), (H, H, Plane), (H, 0, Held.Fixed)],
            [(0, 1, stiff), (1, 2, stiff), (2, 3, stiff)],
            Bench.Steel(200_000, 77_000)
        );

        var s = Bench.Solve(model, new() { Nodes = [new NodeLoad(1, new Vector3(P, 0, 0))] });

        Assert.Equal(P * H / 2 * 4 / 7, Moment(s.At(0, 0)), 1.0);
        Assert.Equal(P * H / 2 * 3 / 7, Moment(s.At(0, H)), 1.0);
        Assert.Equal(P * H * H * H / (12 * 200_000 * tube.InertiaY) * 5 / 7, s.Shift(1).X, 1e-4);
    }

    private static double Moment(SectionForces f) => Math.Sqrt((f.MomentY * f.MomentY) + (f.MomentZ * f.MomentZ));

    private static double Shear(SectionForces f) => Math.Sqrt((f.ShearY * f.ShearY) + (f.ShearZ * f.ShearZ));

    private static FrameModel Frame(
        (double X, double Y, Held Held)[] nodes,
        (int From, int To, SectionProperties Section)[] elements,
        Steel steel
    ) =>
        new(
            [.. nodes.Select(n => new FrameNode("n", new Vector3(n.X, n.Y, 0), n.Held))],
            [
                .. elements.Select(e => new FrameElement(
                    "e",
                    e.From,
                    e.To,
                    e.Section,
                    steel,
                    EndStiffness.Rigid,
                    EndStiffness.Rigid
                )),
            ]
        );
}
