namespace Dripwright.Engine.Stands.Frame;

/// <summary>Words for a motion that nothing resists.</summary>
internal static class FreeMotions
{
    /// <summary>The fault whose motion this is: the node that moves most names it.</summary>
    public static FrameFault Fault(FrameModel model, FrameFaultKind kind, double[] motion)
    {
        var parts = new (Vector3 Shift, Vector3 Turn)[model.Nodes.Count];
        var mostShift = 0;
        var mostTurn = 0;
        for (var i = 0; i < parts.Length; i++)
        {
            ReadOnlySpan<double> m = motion.AsSpan(6 * i, 6);
            parts[i] = (new Vector3(m[0], m[1], m[2]), new Vector3(m[3], m[4], m[5]));
            // Rounding must not decide between nodes that move alike: the first of them names the motion.
            mostShift = parts[i].Shift.Length > (1 + 1e-6) * parts[mostShift].Shift.Length ? i : mostShift;
            mostTurn = parts[i].Turn.Length > (1 + 1e-6) * parts[mostTurn].Turn.Length ? i : mostTurn;
        }

        var shift = parts[mostShift].Shift.Length;
        var turn = parts[mostTurn].Turn.Length;
        // Measured in metres and radians: a turn that shifts nothing by a thousandth of itself is a turn on the spot.
        var turns = shift < 1e-3 * turn;
        var node = turns ? mostTurn : mostShift;
        var way = turns ? parts[node].Turn : parts[node].Shift;
        var size = way.Length;
        var most = Math.Max(shift, turn);
        return new FrameFault(
            kind,
            node,
            model.Nodes[node].Name,
            size > 0 ? Forward(1 / size * way) : way,
            turns,
            most > 0 ? [.. parts.Select(p => (1 / most * p.Shift, 1 / most * p.Turn))] : parts
        );
    }

    // A free motion runs both ways; it is named by its positive one.
    private static Vector3 Forward(Vector3 way)
    {
        var (x, y, z) = (Math.Abs(way.X), Math.Abs(way.Y), Math.Abs(way.Z));
        var main =
            x >= y && x >= z ? way.X
            : y >= z ? way.Y
            : way.Z;
        return main < 0 ? -way : way;
    }
}
