using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>
/// The cabinet on locked casters of Beer and Johnston, Vector Mechanics for Engineers: Statics, chapter 8 (friction): 120 lb, feet
/// 24 in apart, friction 0.30, pushed level. Printed answers 36.0 lb, and 40.0 in for the height at which it tips instead
/// (problem and answers from memory, worked again by hand: 0.3 × 120 lb; 120 lb × 12 in / 36 lb).
/// </summary>
public sealed class FloorExamples
{
    private const double Inch = 0.0254;
    private const double Pound = 4.4482216;

    [Theory]
    [InlineData(32, 35.9, null)]
    [InlineData(32, 36.1, FrameFaultKind.Walks)]
    // At 39 in it still slides first; at 41 in it tips before: 120 × 12 / 41 = 35.1 lb.
    [InlineData(39, 35.9, null)]
    [InlineData(39, 36.1, FrameFaultKind.Walks)]
    [InlineData(41, 35.0, null)]
    [InlineData(41, 35.3, FrameFaultKind.Tips)]
    public void A_cabinet_slides_or_tips_at_the_published_push(double height, double push, FrameFaultKind? gives)
    {
        var cabinet = Cabinet(height * Inch);
        FrameLoading weight = new()
        {
            Nodes = [.. new[] { 2, 3, 6, 7 }.Select(n => new NodeLoad(n, new Vector3(0, 0, -30 * Pound)))],
        };
        FrameLoading pushed = new()
        {
            Nodes = [.. new[] { 2, 6 }.Select(n => new NodeLoad(n, new Vector3(0, push / 2 * Pound, 0)))],
        };

        var outcome = new FrameSolver(cabinet).Solve(weight.And(pushed), new FrameOptions { Friction = 0.3 }, weight);

        if (gives is { } kind)
        {
            Assert.Equal(kind, Assert.IsType<FrameFault>(outcome).Kind);
        }
        else
        {
            // Feet on the far side carry what the moment takes off the near ones: 60 lb ± P h / 24 in.
            var far = Assert.IsType<FrameSolution>(outcome);
            Assert.Equal(
                60 + (push * height / 24),
                (far.Reaction(1).Force.Z + far.Reaction(5).Force.Z) / Pound,
                1e-6 * 120
            );
        }
    }

    // Two frames 30 in apart, stiff beside any stand: feet front and back 24 in apart, a beam over them and one along.
    private static FrameModel Cabinet(double height)
    {
        var section = TubeSection.OfRoundTube(0.0508, 0.003).Properties;
        List<FrameNode> nodes = [];
        List<FrameElement> elements = [];
        void Add(int from, int to) =>
            elements.Add(
                new FrameElement("", from, to, section, Steels.Weakest, EndStiffness.Rigid, EndStiffness.Rigid)
            );
        for (var i = 0; i < 2; i++)
        {
            foreach (var up in (double[])[0, height])
            {
                foreach (var depth in (double[])[0, 24 * Inch])
                {
                    var foot = up == 0;
                    nodes.Add(
                        new FrameNode(
                            foot ? "foot" : "top",
                            new Vector3(i * 30 * Inch, depth, up),
                            foot ? Held.Pin | Held.TurnZ : Held.None,
                            foot
                        )
                    );
                }
            }

            Add(4 * i, (4 * i) + 2);
            Add((4 * i) + 1, (4 * i) + 3);
            Add((4 * i) + 2, (4 * i) + 3);
        }

        Add(2, 6);
        Add(3, 7);
        return new FrameModel(nodes, elements);
    }
}
