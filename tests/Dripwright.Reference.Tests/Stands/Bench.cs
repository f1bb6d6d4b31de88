using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>Small frames to check by, in any consistent units.</summary>
internal static class Bench
{
    /// <summary>Round steel tube 1 in × 0.065 in with E = 200 GPa, bending only.</summary>
    public static SectionProperties Tube { get; } = TubeSection.OfRoundTube(0.0254, 0.001651).Properties.WithoutShear();

    public static Steel Steel(double young, double shear) =>
        new("test", "test", young, young, false, "test") { Young = young, Shear = shear };

    public static SectionProperties Section(double area, double inertia, double torsion = 1) =>
        new(area, inertia, inertia, 1, 1, torsion, double.PositiveInfinity, double.PositiveInfinity, true);

    /// <summary>A straight row of equal elements along x, both ends as given.</summary>
    public static FrameModel Line(
        double length,
        int parts,
        SectionProperties section,
        Steel steel,
        Held first,
        Held last,
        EndStiffness? ends = null,
        Held middle = Held.None
    )
    {
        var nodes = new List<FrameNode>();
        var elements = new List<FrameElement>();
        for (var i = 0; i <= parts; i++)
        {
            var held =
                i == 0 ? first
                : i == parts ? last
                : 2 * i == parts ? middle
                : Held.None;
            nodes.Add(new FrameNode("n", new Vector3(i * length / parts, 0, 0), held));
            if (i > 0)
            {
                elements.Add(
                    new FrameElement(
                        "e",
                        i - 1,
                        i,
                        section,
                        steel,
                        i == 1 ? ends ?? EndStiffness.Rigid : EndStiffness.Rigid,
                        i == parts ? ends ?? EndStiffness.Rigid : EndStiffness.Rigid
                    )
                );
            }
        }

        return new FrameModel(nodes, elements);
    }

    public static FrameSolution Solve(FrameModel model, FrameLoading loading, FrameOptions? options = null) =>
        Assert.IsType<FrameSolution>(new FrameSolver(model).Solve(loading, options));

    public static FrameLoading Even(FrameModel model, Vector3 perMetre) =>
        new() { Lines = [.. Enumerable.Range(0, model.Elements.Count).Select(e => new LineLoad(e, perMetre))] };
}
