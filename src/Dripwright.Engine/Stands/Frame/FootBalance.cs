namespace Dripwright.Engine.Stands.Frame;

/// <summary>One foot in balance while the others stay where they are.</summary>
internal sealed class FootBalance
{
    private readonly FootStiffness _stiffness;
    private readonly FootLaw _law;
    private readonly int _foot;
    private readonly double[] _force;
    private readonly double[] _own = new double[9];

    /// <param name="stiffness">The frame on its feet.</param>
    /// <param name="law">How the floor holds them.</param>
    /// <param name="foot">Which.</param>
    /// <param name="force">[N] On it where it is.</param>
    /// <param name="drag">[N/m] Added resistance.</param>
    public FootBalance(FootStiffness stiffness, FootLaw law, int foot, double[] force, double drag)
    {
        (_stiffness, _law, _foot, _force) = (stiffness, law, foot, force);
        var columns = stiffness.Columns(foot);
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                _own[(3 * i) + j] = Holds(i) && Holds(j) ? columns[(9 * foot) + (3 * i) + j] : 0;
            }

            _own[4 * i] += Holds(i) ? drag : 1;
            _force[i] = Holds(i) ? _force[i] : 0;
        }
    }

    /// <summary>Where it comes to rest.</summary>
    /// <param name="at">[m] Where it is.</param>
    /// <param name="anchor">[m] Where it last stuck.</param>
    public double[] Rest(ReadOnlySpan<double> at, ReadOnlySpan<double> anchor)
    {
        double[] here = [.. at];
        double[] stuck = [anchor[0], anchor[1], 0];
        var force = Force(here, stuck);
        var level = Math.Sqrt((force[0] * force[0]) + (force[1] * force[1]));
        if (!_law.Rollers && (force[2] >= 0 || !Holds(2)) && level <= _law.Friction * force[2])
        {
            return stuck;
        }

        double[] side = [-_force[0], -_force[1], -_force[2]];
        if (Holds(2) && SmallSystem.TrySolve((double[])_own.Clone(), side) && here[2] + side[2] >= 0)
        {
            return [here[0] + side[0], here[1] + side[1], here[2] + side[2]];
        }

        return _law.Rollers ? Rolled(here) : Slipped(here, stuck) ?? stuck;
    }

    private bool Holds(int direction) => _stiffness.Holds((3 * _foot) + direction);

    private double[] Force(double[] from, double[] to)
    {
        var force = (double[])_force.Clone();
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                force[i] += _own[(3 * i) + j] * (to[j] - from[j]);
            }
        }

        return force;
    }

    private double[] Rolled(double[] here)
    {
        var (x, y) = (
            FootLaw.RollerShare * _stiffness.Own[3 * _foot],
            FootLaw.RollerShare * _stiffness.Own[(3 * _foot) + 1]
        );
        var down = Force(here, [here[0], here[1], 0]);
        double[] side = [-(down[0] + (x * here[0])), -(down[1] + (y * here[1]))];
        return SmallSystem.TrySolve([_own[0] + x, _own[1], _own[3], _own[4] + y], side)
            ? [here[0] + side[0], here[1] + side[1], 0]
            : here;
    }

    // The way of the floor's force for which the foot slips straight against it, found by halving all round.
    private double[]? Slipped(double[] here, double[] stuck)
    {
        const int Ways = 48;
        var before = Across(0);
        for (var i = 1; i <= Ways; i++)
        {
            var next = Across(i * 2 * Math.PI / Ways);
            if (before.Cross * next.Cross <= 0 && (before.Against || next.Against))
            {
                var (low, high) = ((i - 1) * 2 * Math.PI / Ways, i * 2 * Math.PI / Ways);
                for (var k = 0; k < 60; k++)
                {
                    var middle = (low + high) / 2;
                    (low, high) = Across(middle).Cross * before.Cross > 0 ? (middle, high) : (low, middle);
                }

                var found = Across(low);
                if (found.Against)
                {
                    return found.To;
                }
            }

            before = next;
        }

        return null;

        (double Cross, bool Against, double[] To) Across(double angle)
        {
            var (x, y) = Math.SinCos(angle) is var (s, c) ? (c, s) : default;
            var down = Force(here, [here[0], here[1], 0]);
            var (mx, my) = (_law.Friction * x, _law.Friction * y);
            double[] side = [(mx * down[2]) - down[0], (my * down[2]) - down[1]];
            var solved = SmallSystem.TrySolve(
                [
                    _own[0] - (mx * _own[6]),
                    _own[1] - (mx * _own[7]),
                    _own[3] - (my * _own[6]),
                    _own[4] - (my * _own[7]),
                ],
                side
            );
            var to = solved ? [here[0] + side[0], here[1] + side[1], 0] : stuck;
            var (dx, dy) = (to[0] - stuck[0], to[1] - stuck[1]);
            return ((dx * y) - (dy * x), (dx * x) + (dy * y) <= 0, to);
        }
    }
}
