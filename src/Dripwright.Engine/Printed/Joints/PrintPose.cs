using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Joints;

/// <summary>How a joint is turned for printing: as many sockets as may be flat on the bed, none pointing down.</summary>
/// <param name="Turn">From the room to the printer.</param>
/// <param name="Ways">Directions of the sockets in the printer's frame.</param>
internal sealed record PrintPose(Placement Turn, IReadOnlyList<Vector3> Ways)
{
    private const double Level = 1e-6;

    /// <summary>Sockets that lie flat.</summary>
    public int Flat => Ways.Count(IsFlat);

    /// <summary>Sockets that point straight up.</summary>
    public int Upright => Ways.Count(IsUpright);

    /// <summary>True where a socket leans over the bed by more than 45°, or points down.</summary>
    public bool NeedsSupport => Ways.Any(way => !IsFlat(way) && way.Z < Math.Sqrt(0.5) - Level);

    public static bool IsFlat(Vector3 way) => Math.Abs(way.Z) < Level;

    public static bool IsUpright(Vector3 way) => way.Z > 1 - Level;

    /// <summary>The best of the poses in which a socket or the normal of two sockets points up.</summary>
    public static PrintPose Of(IReadOnlyList<Vector3> directions)
    {
        Vector3[] ways = [.. directions.Select(d => d.Unit())];
        List<Vector3> ups = [];
        for (var i = 0; i < ways.Length; i++)
        {
            for (var j = i + 1; j < ways.Length; j++)
            {
                var normal = ways[i].Cross(ways[j]);
                if (normal.Length > 1e-3)
                {
                    ups.Add(normal.Unit());
                    ups.Add(-normal.Unit());
                }
            }
        }

        ups.AddRange(ways);
        ups.AddRange(ways.Select(way => -way));
        return ups.Select(up => With(up, ways))
            .MinBy(pose => (pose.Ways.Count(w => w.Z < -Level), pose.NeedsSupport ? 1 : 0, -pose.Flat))!;
    }

    /// <summary>Into use for a part that is printed upright: its z axis along a direction of the room.</summary>
    /// <param name="way">The direction.</param>
    /// <param name="middle">[m] Height of what becomes the origin.</param>
    public static Placement Stood(Vector3 way, double middle)
    {
        Vector3 side = Math.Abs(way.Unit().X) < 0.9 ? new(1, 0, 0) : new(0, 1, 0);
        return Placement.Along(way, side, default).After(Placement.Shifted(new(0, 0, -middle)));
    }

    private static PrintPose With(Vector3 up, Vector3[] ways)
    {
        var along = ways.FirstOrDefault(way => Math.Abs(way.Dot(up)) < Level);
        if (along.Length < 0.5)
        {
            along = Math.Abs(up.X) < 0.9 ? new(1, 0, 0) : new(0, 1, 0);
        }

        var turn = Placement.Along(up, along, default).Inverse();
        return new(turn, [.. ways.Select(way => Clean(turn.Turned(way)))]);
    }

    /// <summary>Takes away what is left of rounding, so that square stays square.</summary>
    private static Vector3 Clean(Vector3 way)
    {
        static double Near(double v) =>
            Math.Abs(v) < 1e-9 ? 0
            : Math.Abs(Math.Abs(v) - 1) < 1e-9 ? Math.Sign(v)
            : v;
        return new(Near(way.X), Near(way.Y), Near(way.Z));
    }
}
