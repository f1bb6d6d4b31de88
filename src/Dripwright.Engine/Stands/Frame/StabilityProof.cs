namespace Dripwright.Engine.Stands.Frame;

/// <summary>Axial forces with which a frame is known to be stable, its feet held.</summary>
/// <remarks>
/// A foot that slips or lifts takes away what held it; whether the frame is still stable then is told by its stiffness
/// condensed onto the ways that are free, since a matrix is positive where a part of it and what is left of the rest are
/// (Haynsworth's inertia, from memory). Stable with some axial forces, it is stable with any of which none is less.
/// </remarks>
public sealed class StabilityProof
{
    private readonly FootStiffness _stiffness;

    internal StabilityProof(double[] tension, FootStiffness stiffness) => (Tension, _stiffness) = (tension, stiffness);

    internal double[] Tension { get; }

    /// <summary>Whether it holds for axial forces none of which is less, with the feet free that are free in a solution.</summary>
    /// <param name="tension">[N] Axial forces.</param>
    /// <param name="solution">The solution.</param>
    public bool Covers(double[] tension, FrameSolution solution)
    {
        ArgumentNullException.ThrowIfNull(tension);
        ArgumentNullException.ThrowIfNull(solution);
        return Covers(tension, solution.Feet, solution.Law);
    }

    /// <summary>The same with the feet as they are.</summary>
    /// <param name="tension">[N] Axial forces.</param>
    /// <param name="feet">The feet.</param>
    /// <param name="law">How the floor holds them.</param>
    internal bool Covers(double[] tension, FeetAtRest feet, FootLaw law)
    {
        for (var e = 0; e < tension.Length; e++)
        {
            if (tension[e] < Tension[e])
            {
                return false;
            }
        }

        for (var foot = 0; foot < feet.Motions.Length; foot++)
        {
            if (feet.Motions[foot] != FootMotion.Sticks && !_stiffness.Knows(foot))
            {
                return false;
            }
        }

        return IsPositive(_stiffness, feet, law);
    }

    /// <summary>Whether nothing is gained by any shift that the feet are free to make.</summary>
    internal static bool IsPositive(FootStiffness stiffness, FeetAtRest feet, FootLaw law)
    {
        List<(int Foot, Vector3 Way)> free = [];
        for (var foot = 0; foot < feet.Motions.Length; foot++)
        {
            var at = 3 * foot;
            if (feet.Motions[foot] == FootMotion.Slips && !law.Rollers)
            {
                free.Add((foot, new Vector3(feet.Slip[at], feet.Slip[at + 1], 0)));
            }
            else if (feet.Motions[foot] != FootMotion.Sticks)
            {
                Vector3[] ways = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
                var count = feet.Motions[foot] == FootMotion.Lifts ? 3 : 2;
                for (var i = 0; i < count; i++)
                {
                    if (stiffness.Holds(at + i))
                    {
                        free.Add((foot, ways[i]));
                    }
                }
            }
        }

        var n = free.Count;
        var matrix = new double[n * n];
        double most = 0;
        for (var j = 0; j < n; j++)
        {
            var columns = stiffness.Columns(free[j].Foot);
            var w = free[j].Way;
            for (var i = j; i < n; i++)
            {
                var row = 9 * free[i].Foot;
                Vector3 force = new(Of(0), Of(3), Of(6));
                matrix[(i * n) + j] = matrix[(j * n) + i] = force.Dot(free[i].Way);

                double Of(int k) =>
                    (columns[row + k] * w.X) + (columns[row + k + 1] * w.Y) + (columns[row + k + 2] * w.Z);
            }

            most = Math.Max(most, matrix[(j * n) + j]);
            if (law.Rollers && feet.Motions[free[j].Foot] == FootMotion.Slips)
            {
                var own = (3 * free[j].Foot) + (w.X > 0 ? 0 : 1);
                matrix[(j * n) + j] += FootLaw.RollerShare * stiffness.Own[own];
            }
        }

        // All feet slipping alike take nothing and give nothing: friction holds them against any other way.
        return n == 0 || SmallSystem.IsPositive(matrix, n, 1e-9 * most);
    }
}
