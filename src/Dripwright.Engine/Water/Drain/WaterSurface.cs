using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>A place where the surface is computed: an end of a short stretch, or one side of an inflow.</summary>
/// <param name="Distance">[m] From the high end.</param>
/// <param name="Flow">[m³/s] Flow here.</param>
/// <param name="Inflow">Number of the inflow just above this place, -1 if none.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SurfaceNode(double Distance, double Flow, int Inflow);

/// <summary>Depths along a channel with inflows.</summary>
/// <param name="Nodes">Places, from the high end down.</param>
/// <param name="Depths">[m] Depth at each.</param>
/// <param name="IsFast">True where fast (supercritical) flow holds.</param>
internal sealed record SurfaceLine(SurfaceNode[] Nodes, double[] Depths, bool[] IsFast);

/// <summary>Steady water surface in a channel whose flow grows along its length.</summary>
internal static class WaterSurface
{
    // The friction slope is taken at one end of each step; 400 steps keep that within a thousandth of the depth.
    private const int LeastSteps = 400;
    private const int LeastStepsToAReach = 2;

    // [m³/s] A drop of water a year. Less than this counts as none, lest depths underflow.
    private const double LeastFlow = 1e-15;

    public static SurfaceLine Solve<T>(
        T section,
        double slope,
        double roughness,
        double length,
        IReadOnlyList<DrainInflow> inflows,
        double outletDepth
    )
        where T : struct, IFlowSection
    {
        var channel = new ChannelFlow<T>(section, slope, roughness);
        var nodes = Lay(length, inflows);
        var critical = CriticalDepths(section, nodes);
        var slow = SlowFromOutlet(channel, nodes, critical, outletDepth);
        var fast = FastFromTop(channel, nodes, critical);

        var isFast = new bool[nodes.Length];
        for (var i = 0; i < nodes.Length; i++)
        {
            var flow = nodes[i].Flow;
            isFast[i] =
                flow > 0 && fast[i] < critical[i] && channel.Force(fast[i], flow) > channel.Force(slow[i], flow);
            slow[i] = isFast[i] ? fast[i] : slow[i];
        }

        return new SurfaceLine(nodes, slow, isFast);
    }

    private static SurfaceNode[] Lay(double length, IReadOnlyList<DrainInflow> inflows)
    {
        var steps = Math.Max(LeastStepsToAReach, LeastSteps / (inflows.Count + 1));
        var nodes = new List<SurfaceNode>((steps + 1) * (inflows.Count + 1)) { new(0, 0, -1) };
        var sum = 0.0;
        var flow = 0.0;
        for (var i = 0; i < inflows.Count; i++)
        {
            Stretch(nodes, inflows[i].Distance, flow, steps);
            sum += inflows[i].Flow;
            flow = sum < LeastFlow ? 0 : sum;
            nodes.Add(new SurfaceNode(inflows[i].Distance, flow, i));
        }

        Stretch(nodes, length, flow, steps);
        return [.. nodes];
    }

    private static void Stretch(List<SurfaceNode> nodes, double end, double flow, int steps)
    {
        var start = nodes[^1].Distance;
        if (end <= start)
        {
            return;
        }

        for (var step = 1; step <= steps; step++)
        {
            var distance = step == steps ? end : start + (end - start) * step / steps;
            nodes.Add(new SurfaceNode(distance, flow, -1));
        }
    }

    private static double[] CriticalDepths<T>(T section, SurfaceNode[] nodes)
        where T : struct, IFlowSection
    {
        var critical = new double[nodes.Length];
        for (var i = 1; i < nodes.Length; i++)
        {
            critical[i] = nodes[i].Flow == nodes[i - 1].Flow ? critical[i - 1] : section.CriticalDepth(nodes[i].Flow);
        }

        return critical;
    }

    private static double[] SlowFromOutlet<T>(
        ChannelFlow<T> channel,
        SurfaceNode[] nodes,
        double[] critical,
        double outletDepth
    )
        where T : struct, IFlowSection
    {
        var depths = new double[nodes.Length];
        depths[^1] = Math.Max(outletDepth, critical[^1]);
        for (var i = nodes.Length - 2; i >= 0; i--)
        {
            var below = depths[i + 1];
            depths[i] =
                nodes[i + 1].Inflow >= 0
                    ? channel.SlowPastInflow(below, nodes[i + 1].Flow, nodes[i].Flow, critical[i])
                    : channel.SlowUp(below, nodes[i].Flow, critical[i], nodes[i + 1].Distance - nodes[i].Distance);
        }

        return depths;
    }

    private static double[] FastFromTop<T>(ChannelFlow<T> channel, SurfaceNode[] nodes, double[] critical)
        where T : struct, IFlowSection
    {
        var depths = new double[nodes.Length];
        for (var i = 1; i < nodes.Length; i++)
        {
            var above = depths[i - 1];
            depths[i] =
                nodes[i].Inflow >= 0
                    ? channel.FastPastInflow(above, nodes[i - 1].Flow, nodes[i].Flow, critical[i])
                    : channel.FastDown(above, nodes[i].Flow, critical[i], nodes[i].Distance - nodes[i - 1].Distance);
        }

        return depths;
    }
}
