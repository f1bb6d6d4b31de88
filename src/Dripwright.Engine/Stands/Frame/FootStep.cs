namespace Dripwright.Engine.Stands.Frame;

/// <summary>The feet as they are, and one more step of load.</summary>
/// <remarks>
/// Newton's method on the projected form of the law, λz = max(0, λz − r·uz) and λt = the nearest to λt − r·Δu in the circle
/// friction·λz (Alart and Curnier, Computer Methods in Applied Mechanics and Engineering 92, 1991, p. 353, from memory). Where that
/// does not come to rest the feet are let creep: a resistance in proportion to the speed is added and taken away again in
/// rounds (the proximal point method). Feet that stand on rest; those that walk run off, and the way they run is told.
/// </remarks>
internal sealed class FootStep
{
    private const int MostRounds = 40;
    private const int MostCreeps = 200;
    private const int MostTurns = 120;

    /// <summary>[-] Most drag of creeping over the first.</summary>
    private const double MostDrag = 1e4;

    /// <summary>[m] Feet further from where they stood than this have walked off or tipped.</summary>
    private const double Gone = 0.5;

    private readonly FootStiffness _stiffness;
    private readonly FootLaw _law;
    private readonly double _size;
    private readonly int _feet;
    private readonly double[] _anchor; // where each foot last stuck; the upright row is not used
    private readonly FootMotion[] _motions;
    private readonly double[] _way; // of the floor's level force on a slipping foot
    private double[] _shifts;
    private double[]? _run;

    public FootStep(FootStiffness stiffness, FootLaw law, double size)
    {
        (_stiffness, _law, _size, _feet) = (stiffness, law, size, stiffness.Feet.Length);
        _anchor = new double[3 * _feet];
        _shifts = new double[3 * _feet];
        _way = new double[3 * _feet];
        _motions = new FootMotion[_feet];
    }

    /// <summary>The feet as they are; where a step failed, the motion that nothing stops.</summary>
    public FeetAtRest Rest() =>
        _run is { } run
            ? new FeetAtRest(run, (FootMotion[])_motions.Clone(), (double[])_way.Clone(), false)
            : new FeetAtRest((double[])_shifts.Clone(), (FootMotion[])_motions.Clone(), (double[])_way.Clone(), true);

    /// <summary>Goes on to other loads; false where the feet find no rest under them.</summary>
    /// <param name="force">[N] What the floor would put on feet that are where they stood at first.</param>
    public bool Move(double[] force)
    {
        if (!Newton(force, (double[])_shifts.Clone(), null, 0, out var shifts) && !Creep(force, out shifts))
        {
            return false;
        }

        _shifts = shifts;
        for (var i = 0; i < shifts.Length; i++)
        {
            _anchor[i] = _motions[i / 3] == FootMotion.Sticks ? _anchor[i] : shifts[i];
        }

        return true;
    }

    // Slower and slower resistance; what is still moving when there is next to none has nothing to stop it.
    private bool Creep(double[] force, out double[] shifts)
    {
        shifts = (double[])_shifts.Clone();
        var first = _size / (Math.Max(_feet, 1) * 1e-3);
        var drag = first;
        for (var round = 0; round < MostCreeps; round++)
        {
            var before = (double[])shifts.Clone();
            var settled = Newton(force, shifts, before, drag, out var next);
            if (!settled && drag < MostDrag * first)
            {
                // Under more drag feet hang less on each other: there Newton's method gets past where it fails under less.
                drag *= 4;
                continue;
            }

            shifts = settled ? next : Swept(force, before, drag);
            var moved = Apart(shifts, before);
            // A round may move little because it is slow: at rest is only what the law without drag leaves where it is.
            if (drag * moved <= 1e-9 * _size && Largest(Rest(shifts, Forces(force, shifts, null, 0))) <= 1e-6 * _size)
            {
                return Near(shifts);
            }

            if (Newton(force, shifts, null, 0, out next))
            {
                shifts = next;
                return Near(shifts);
            }

            if (!Near(shifts))
            {
                _run = [.. shifts.Select((s, i) => s - before[i])];
                return false;
            }

            drag = Math.Max(drag / 3, 1e-9 * first);
        }

        _run = (double[])shifts.Clone();
        return false;
    }

    private static double Apart(double[] a, double[] b)
    {
        double most = 0;
        for (var i = 0; i < a.Length; i++)
        {
            most = Math.Max(most, Math.Abs(a[i] - b[i]));
        }

        return most;
    }

    private static bool Near(double[] shifts) => Array.TrueForAll(shifts, s => Math.Abs(s) < Gone);

    // One foot after the other, each in balance while the others stay, again and again.
    private double[] Swept(double[] force, double[] before, double drag)
    {
        var u = (double[])before.Clone();
        FootBalance[] feet =
        [
            .. Enumerable.Range(0, _feet).Select(foot => new FootBalance(_stiffness, _law, foot, drag)),
        ];
        for (var sweep = 0; sweep < MostTurns; sweep++)
        {
            // Summed anew each time round, so that what a foot's move adds cannot gather.
            var forces = Forces(force, u, before, drag);
            double moved = 0;
            for (var foot = 0; foot < _feet; foot++)
            {
                var at = 3 * foot;
                var next = feet[foot].Rest(forces.AsSpan(at, 3), u.AsSpan(at, 3), _anchor.AsSpan(at, 2));
                var (x, y, z) = (next.X - u[at], next.Y - u[at + 1], next.Z - u[at + 2]);
                moved = Math.Max(moved, Math.Max(Math.Abs(x), Math.Max(Math.Abs(y), Math.Abs(z))));
                var columns = _stiffness.Columns(foot);
                for (var row = 0; row < forces.Length; row++)
                {
                    forces[row] += (columns[3 * row] * x) + (columns[(3 * row) + 1] * y) + (columns[(3 * row) + 2] * z);
                }

                forces[at] += _stiffness.Holds(at) ? drag * x : 0;
                forces[at + 1] += _stiffness.Holds(at + 1) ? drag * y : 0;
                forces[at + 2] += _stiffness.Holds(at + 2) ? drag * z : 0;
                (u[at], u[at + 1], u[at + 2]) = (next.X, next.Y, next.Z);
            }

            // Good enough to go on from; the last round is Newton's, or moves no further.
            if (drag * moved <= 1e-7 * _size || moved <= 1e-3 * Apart(u, before))
            {
                break;
            }
        }

        // Where the turns run away from each other nothing is gained.
        return u.All(double.IsFinite) && Near(u) ? u : before;
    }

    // [N] On each foot, with the drag of creeping where there is one.
    private double[] Forces(double[] force, double[] u, double[]? before, double drag)
    {
        var sum = (double[])force.Clone();
        for (var foot = 0; foot < _feet; foot++)
        {
            var at = 3 * foot;
            if (u[at] == 0 && u[at + 1] == 0 && u[at + 2] == 0)
            {
                continue;
            }

            var columns = _stiffness.Columns(foot);
            for (var row = 0; row < sum.Length; row++)
            {
                sum[row] +=
                    (columns[3 * row] * u[at])
                    + (columns[(3 * row) + 1] * u[at + 1])
                    + (columns[(3 * row) + 2] * u[at + 2]);
            }
        }

        if (before is not null)
        {
            for (var row = 0; row < sum.Length; row++)
            {
                sum[row] += _stiffness.Holds(row) ? drag * (u[row] - before[row]) : 0;
            }
        }

        return sum;
    }

    private bool Newton(double[] force, double[] start, double[]? before, double drag, out double[] found)
    {
        found = start;
        var u = (double[])start.Clone();
        var forces = Forces(force, u, before, drag);
        var rest = Rest(u, forces);
        for (var round = 0; round < MostRounds; round++)
        {
            if (Largest(rest) <= 1e-10 * _size)
            {
                found = u;
                return true;
            }

            if (Step(u, forces, rest, drag) is not { } step)
            {
                return false;
            }

            // The whole step where it brings the rest down, else the shortened one that leaves the least.
            var best = double.PositiveInfinity;
            double[]? bestAt = null;
            for (var share = 1.0; share > 0.05; share /= 2)
            {
                double[] tried = [.. u.Select((v, i) => v + (share * step[i]))];
                var left = Largest(Rest(tried, Forces(force, tried, before, drag)));
                if (left < best)
                {
                    (best, bestAt) = (left, tried);
                }

                if (left < 0.9 * Largest(rest))
                {
                    break;
                }
            }

            if (bestAt is null || !Near(bestAt))
            {
                return false;
            }

            u = bestAt;
            forces = Forces(force, u, before, drag);
            rest = Rest(u, forces);
        }

        return false;
    }

    private static double Largest(double[] values)
    {
        double most = 0;
        foreach (var value in values)
        {
            most = Math.Max(most, Math.Abs(value));
        }

        return double.IsNaN(most) ? double.PositiveInfinity : most;
    }

    // [N] How far each foot is from the law; says on the way what each does.
    private double[] Rest(double[] u, double[] forces)
    {
        var rest = new double[u.Length];
        for (var foot = 0; foot < _feet; foot++)
        {
            var (x, y, z) = (3 * foot, (3 * foot) + 1, (3 * foot) + 2);
            var presses = _stiffness.Holds(z) ? forces[z] - (_stiffness.Own[z] * u[z]) : double.PositiveInfinity;
            if (presses <= 0)
            {
                _motions[foot] = FootMotion.Lifts;
                (rest[x], rest[y], rest[z]) = (Held(x, forces[x]), Held(y, forces[y]), forces[z]);
                continue;
            }

            rest[z] = _stiffness.Holds(z) ? _stiffness.Own[z] * u[z] : 0;
            if (_law.Rollers)
            {
                _motions[foot] = FootMotion.Slips;
                rest[x] = Held(x, forces[x] + (FootLaw.RollerShare * _stiffness.Own[x] * u[x]));
                rest[y] = Held(y, forces[y] + (FootLaw.RollerShare * _stiffness.Own[y] * u[y]));
                continue;
            }

            var (pullX, pullY) = (
                Held(x, forces[x] - (_stiffness.Own[x] * (u[x] - _anchor[x]))),
                Held(y, forces[y] - (_stiffness.Own[y] * (u[y] - _anchor[y])))
            );
            var pull = Math.Sqrt((pullX * pullX) + (pullY * pullY));
            if (pull <= _law.Friction * presses || double.IsPositiveInfinity(_law.Friction))
            {
                _motions[foot] = FootMotion.Sticks;
                rest[x] = Held(x, _stiffness.Own[x] * (u[x] - _anchor[x]));
                rest[y] = Held(y, _stiffness.Own[y] * (u[y] - _anchor[y]));
                continue;
            }

            _motions[foot] = FootMotion.Slips;
            (_way[x], _way[y]) = (pullX / pull, pullY / pull);
            rest[x] = Held(x, forces[x] - (_law.Friction * presses * _way[x]));
            rest[y] = Held(y, forces[y] - (_law.Friction * presses * _way[y]));
        }

        return rest;
    }

    private double Held(int row, double value) => _stiffness.Holds(row) ? value : 0;

    // The step that would take the rest to nothing if every foot went on doing what it does.
    private double[]? Step(double[] u, double[] forces, double[] rest, double drag)
    {
        var step = new double[u.Length];
        List<int> open = [];
        for (var row = 0; row < u.Length; row++)
        {
            if (!_stiffness.Holds(row))
            {
                continue;
            }

            var motion = _motions[row / 3];
            if (motion == FootMotion.Lifts || (motion == FootMotion.Slips && row % 3 < 2))
            {
                open.Add(row);
            }
            else
            {
                step[row] = -(row % 3 == 2 ? u[row] : u[row] - _anchor[row]);
            }
        }

        if (open.Count == 0)
        {
            return step;
        }

        // Forces change by what the known rows of the step bring, then by the open ones.
        var known = Change(step, drag);
        var size = open.Count;
        var matrix = new double[size * size];
        var side = new double[size];
        for (var i = 0; i < size; i++)
        {
            var row = open[i];
            var foot = row / 3;
            var (x, y, z) = (3 * foot, (3 * foot) + 1, (3 * foot) + 2);
            if (_motions[foot] == FootMotion.Lifts)
            {
                side[i] = -(rest[row] + known[row]);
                for (var j = 0; j < size; j++)
                {
                    matrix[(i * size) + j] = Entry(row, open[j], drag);
                }

                continue;
            }

            if (_law.Rollers)
            {
                side[i] = -(rest[row] + known[row]);
                for (var j = 0; j < size; j++)
                {
                    matrix[(i * size) + j] =
                        Entry(row, open[j], drag) + (row == open[j] ? FootLaw.RollerShare * _stiffness.Own[row] : 0);
                }

                continue;
            }

            // d of friction·presses·way, where the way turns with the pull.
            var presses = _stiffness.Holds(z) ? forces[z] - (_stiffness.Own[z] * u[z]) : 0;
            var pullX = Held(x, forces[x] - (_stiffness.Own[x] * (u[x] - _anchor[x])));
            var pullY = Held(y, forces[y] - (_stiffness.Own[y] * (u[y] - _anchor[y])));
            var turn = _law.Friction * presses / Math.Sqrt((pullX * pullX) + (pullY * pullY));
            var own = row % 3 == 0 ? 0 : 1;
            var (alongX, alongY) = (
                ((own == 0 ? 1 : 0) - (_way[row] * _way[x])) * turn,
                ((own == 1 ? 1 : 0) - (_way[row] * _way[y])) * turn
            );
            var upright = _law.Friction * _way[row];
            double Of(double onX, double onY, double onZ, double onRow) =>
                onRow - (upright * onZ) - (alongX * onX) - (alongY * onY);
            side[i] = -(rest[row] + Of(known[x], known[y], known[z] - (_stiffness.Own[z] * step[z]), known[row]));
            for (var j = 0; j < size; j++)
            {
                var column = open[j];
                var onX = Entry(x, column, drag) - (column == x ? _stiffness.Own[x] : 0);
                var onY = Entry(y, column, drag) - (column == y ? _stiffness.Own[y] : 0);
                matrix[(i * size) + j] = Of(onX, onY, Entry(z, column, drag), Entry(row, column, drag));
            }
        }

        if (!SmallSystem.TrySolve(matrix, side))
        {
            return null;
        }

        for (var i = 0; i < size; i++)
        {
            step[open[i]] = side[i];
        }

        return step;
    }

    private double Entry(int row, int column, double drag) =>
        _stiffness.Columns(column / 3)[(3 * row) + (column % 3)] + (row == column ? drag : 0);

    private double[] Change(double[] step, double drag)
    {
        var change = new double[step.Length];
        for (var column = 0; column < step.Length; column++)
        {
            if (step[column] == 0)
            {
                continue;
            }

            var columns = _stiffness.Columns(column / 3);
            for (var row = 0; row < change.Length; row++)
            {
                change[row] += columns[(3 * row) + (column % 3)] * step[column];
            }

            change[column] += drag * step[column];
        }

        return change;
    }
}
