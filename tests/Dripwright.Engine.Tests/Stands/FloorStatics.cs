using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Google.OrTools.LinearSolver;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>
/// Whether any forces of the floor, each pressing and within a share of its friction, balance loads on a rigid body: what a
/// stand that is refused must not have and one that is passed must. A linear program with cones of 32 sides, inside the
/// round ones.
/// </summary>
internal static class FloorStatics
{
    private const int Sides = 32;

    public static bool Balances(StandFrame frame, IReadOnlyList<(Vector3 Force, Vector3 At)> acting, double friction)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var six = new Constraint[6];
        var weight = acting.Sum(a => a.Force.Length);
        var sums = new double[6];
        foreach (var (force, at) in acting)
        {
            Add(force, at, (i, value) => sums[i] += value);
        }

        for (var i = 0; i < 6; i++)
        {
            var slack = 1e-7 * weight;
            six[i] = solver.MakeConstraint(-sums[i] - slack, -sums[i] + slack);
        }

        foreach (var foot in frame.Feet)
        {
            var at = frame.Model.Nodes[foot].At;
            for (var k = 0; k < Sides; k++)
            {
                var (sin, cos) = Math.SinCos(2 * Math.PI * k / Sides);
                var share = solver.MakeNumVar(0, double.PositiveInfinity, "");
                Add(
                    new Vector3(friction * cos, friction * sin, 1),
                    at,
                    (i, value) => six[i].SetCoefficient(share, value)
                );
            }
        }

        return solver.Solve() == Solver.ResultStatus.OPTIMAL;
    }

    private static void Add(Vector3 force, Vector3 at, Action<int, double> add)
    {
        var moment = at.Cross(force);
        double[] values = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
        for (var i = 0; i < 6; i++)
        {
            add(i, values[i]);
        }
    }
}
