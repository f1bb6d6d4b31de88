namespace Dripwright.Engine.Printed.Joints;

/// <summary>Sets of directions in which tubes leave a joint.</summary>
public static class SocketPattern
{
    /// <summary>[-] Directions count as square, opposite or the same within this much of their product.</summary>
    private const double Same = 1e-3;

    private static readonly Vector3 s_x = new(1, 0, 0);
    private static readonly Vector3 s_y = new(0, 1, 0);
    private static readonly Vector3 s_down = new(0, 0, -1);

    /// <summary>The usual directions of a kind, in the room (z up); empty for a kind that joins no tubes.</summary>
    /// <param name="kind">The kind.</param>
    public static IReadOnlyList<Vector3> Usual(PrintedKind kind) =>
        kind switch
        {
            PrintedKind.Corner => [s_x, s_y],
            PrintedKind.ThreeWay => [s_x, s_y, s_down],
            PrintedKind.FourWay => [s_x, -s_x, s_y, s_down],
            PrintedKind.Cross => [s_x, -s_x, s_y, -s_y],
            PrintedKind.Tee => [s_x, -s_x, s_y],
            PrintedKind.Joint => [s_x, -s_x, new Vector3(1, 0, -1).Unit(), s_down],
            PrintedKind.Coupler => [s_x, -s_x],
            PrintedKind.Foot => [Vector3.Up],
            _ => [],
        };

    /// <summary>The kind that joins tubes leaving in given directions.</summary>
    /// <param name="directions">One to six directions of any length.</param>
    /// <returns>The simplest kind; <see cref="PrintedKind.Joint"/> where no other has this pattern.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no direction.</exception>
    public static PrintedKind KindOf(IReadOnlyList<Vector3> directions)
    {
        ArgumentOutOfRangeException.ThrowIfZero(directions.Count, nameof(directions));
        Vector3[] ways = [.. directions.Select(d => d.Unit())];
        var opposite = Pairs(ways).Count(p => p <= -1 + Same);
        var square = Pairs(ways).All(p => Math.Abs(p) <= Same || p <= -1 + Same);
        return (ways.Length, opposite, square) switch
        {
            (1, _, _) => PrintedKind.Foot,
            (2, 1, _) => PrintedKind.Coupler,
            (2, _, _) => PrintedKind.Corner,
            (3, 0, true) => PrintedKind.ThreeWay,
            (3, 1, true) => PrintedKind.Tee,
            (4, 2, true) => PrintedKind.Cross,
            (4, 1, true) => PrintedKind.FourWay,
            _ => PrintedKind.Joint,
        };
    }

    /// <summary>[rad] Least angle between two of several directions; π for a single one.</summary>
    /// <param name="directions">Directions of any length.</param>
    public static double LeastAngle(IReadOnlyList<Vector3> directions) =>
        Pairs([.. directions.Select(d => d.Unit())])
            .Select(p => Math.Acos(Math.Clamp(p, -1, 1)))
            .DefaultIfEmpty(Math.PI)
            .Min();

    private static IEnumerable<double> Pairs(Vector3[] ways)
    {
        for (var i = 0; i < ways.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                yield return ways[i].Dot(ways[j]);
            }
        }
    }
}
