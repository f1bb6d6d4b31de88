using Dripwright.Engine.Numerics;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Frames that do not stand are named, and feet only push.</summary>
public sealed class FrameFaultTests
{
    private static readonly EndStiffness s_firm = EndStiffness.Rigid;

    [Fact]
    public void A_tube_that_hangs_on_nothing_is_named()
    {
        var table = Table(s_firm);
        var model = new FrameModel(
            [.. table.Nodes, new("stray start", new Vector3(0, 2, 1)), new("stray end", new Vector3(1, 2, 1))],
            [.. table.Elements, Element(table.Nodes.Count, table.Nodes.Count + 1, s_firm)]
        );

        var fault = Assert.IsType<FrameFault>(new FrameSolver(model).Solve(new()));

        Assert.Equal(FrameFaultKind.Loose, fault.Kind);
        Assert.StartsWith("stray", fault.NodeName, StringComparison.Ordinal);
        Assert.All(fault.Motion.Take(table.Nodes.Count), m => Assert.True(m.Shift.Length < 1e-6));
    }

    [Fact]
    public void A_portal_of_hinges_moves_sideways_at_its_top()
    {
        // A plane portal on hinged feet with hinges at the top: it folds along x.
        var plane = Held.Y | Held.TurnX | Held.TurnZ;
        var hinge = EndStiffness.Hinge;
        FrameNode[] nodes =
        [
            new("left foot", new Vector3(0, 0, 0), Held.Pin | plane),
            new("left top", new Vector3(0, 0, 1), plane),
            new("right top", new Vector3(1, 0, 1), plane),
            new("right foot", new Vector3(1, 0, 0), Held.Pin | plane),
        ];
        var model = new FrameModel(nodes, [Element(0, 1, s_firm), Element(1, 2, hinge), Element(3, 2, s_firm)]);

        var fault = Assert.IsType<FrameFault>(new FrameSolver(model).Solve(new()));

        Assert.Equal(FrameFaultKind.Loose, fault.Kind);
        Assert.EndsWith("top", fault.NodeName, StringComparison.Ordinal);
        Assert.Equal(1, Math.Abs(fault.Direction.X), 1e-6);
        Assert.Contains("can move along the row", Told(fault), StringComparison.Ordinal);
    }

    [Fact]
    public void A_node_whose_tubes_all_swivel_turns_on_the_spot()
    {
        var table = Table(new EndStiffness(500, 0));
        var swivel = new EndStiffness(0, 0);
        var model = new FrameModel(
            [.. table.Nodes, new("knot", new Vector3(0.5, 0.2, 1))],
            [
                .. table.Elements,
                .. new[] { 2, 3, 6, 7 }.Select(top => new FrameElement(
                    "stay",
                    top,
                    8,
                    TestFrames.Tube.Properties,
                    TestFrames.Steel,
                    s_firm,
                    swivel
                )),
            ]
        );

        var fault = Assert.IsType<FrameFault>(new FrameSolver(model).Solve(new()));

        Assert.True(fault.Turns);
        Assert.Equal("knot", fault.NodeName);
    }

    [Fact]
    public void A_foot_lifts_rather_than_pull()
    {
        // Four feet on the floor, the weight of the tubes, and a push at the top that all but tips it.
        var model = Table(new EndStiffness(1000, 0), Held.Pin | Held.TurnZ, true);
        FrameLoading weight = new()
        {
            Lines = [.. Enumerable.Range(0, model.Elements.Count).Select(e => new LineLoad(e, new Vector3(0, 0, -50)))],
        };
        var all = Enumerable.Range(0, model.Elements.Count).Sum(e => 50 * model.LengthOf(e));
        // Pushed at one end only: there the front foot lifts.
        FrameLoading push = new() { Nodes = [new NodeLoad(3, new Vector3(0, 0.8 * all * 0.2 / 0.7, 0))] };

        var s = Assert.IsType<FrameSolution>(new FrameSolver(model).Solve(weight.And(push)));

        Assert.NotEmpty(s.Lifted);
        Assert.All(Enumerable.Range(0, model.Nodes.Count), n => Assert.True(s.Reaction(n).Force.Z >= 0));
        Assert.All(s.Lifted, n => Assert.True(s.Shift(n).Z > 0));
        Assert.Equal(all, Enumerable.Range(0, 8).Sum(n => s.Reaction(n).Force.Z), 1e-9 * all);
    }

    [Fact]
    public void A_stand_pushed_past_its_feet_tips()
    {
        var model = Table(new EndStiffness(1000, 0), Held.Pin | Held.TurnZ, true);
        FrameLoading loading = new()
        {
            Lines = [.. Enumerable.Range(0, model.Elements.Count).Select(e => new LineLoad(e, new Vector3(0, 0, -5)))],
            Nodes = [new NodeLoad(3, new Vector3(0, 50, 0)), new NodeLoad(7, new Vector3(0, 50, 0))],
        };

        var fault = Assert.IsType<FrameFault>(new FrameSolver(model).Solve(loading));

        Assert.Equal(FrameFaultKind.Tips, fault.Kind);
        Assert.Contains("tips", Told(fault), StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_past_the_buckling_factor_is_called_buckling()
    {
        var model = Table(new EndStiffness(200, 0), Held.Pin | Held.TurnZ);
        FrameLoading press = new()
        {
            Nodes = [.. new[] { 2, 3, 6, 7 }.Select(n => new NodeLoad(n, new Vector3(0, 0, -100)))],
        };
        var solver = new FrameSolver(model);
        var factor = solver.Buckling(Assert.IsType<FrameSolution>(solver.Solve(press)))!.Factor;
        var options = new FrameOptions { SecondOrder = true };

        Assert.IsType<FrameSolution>(solver.Solve(press.Times(0.99 * factor), options));
        var fault = Assert.IsType<FrameFault>(solver.Solve(press.Times(1.01 * factor), options));

        Assert.Equal(FrameFaultKind.Buckles, fault.Kind);
    }

    [Fact]
    public void Misuse_is_refused()
    {
        var model = Table(s_firm);
        var solver = new FrameSolver(model);

        Assert.Throws<ArgumentOutOfRangeException>(() => solver.Solve(new() { Nodes = [new NodeLoad(99, default)] }));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            solver.Solve(new() { Nodes = [new NodeLoad(2, new Vector3(double.NaN, 0, 0))] })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            solver.Solve(new() { Points = [new PointLoad(0, 5, default)] })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new FrameModel(model.Nodes, [Element(0, 0, s_firm)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => TubeSection.OfRoundTube(0.02, 0.011));
        Assert.Throws<ArgumentOutOfRangeException>(() => TestFrames.Tube.Worn(1));
    }

    private static string Told(FrameFault fault) => fault.Sentence(Phrase.Plain(fault.NodeName)).Told();

    private static FrameModel Table(EndStiffness joint, Held feet = Held.Fixed, bool lifts = false) =>
        TestFrames.Table(1, 1, 0.4, 0.7, TestFrames.Tube.Properties, joint, feet, lifts);

    private static FrameElement Element(int from, int to, EndStiffness ends) =>
        new("tube", from, to, TestFrames.Tube.Properties, TestFrames.Steel, ends, ends);
}
