namespace Dripwright.Engine.Stands.Frame;

/// <summary>One foot in balance while the others stay where they are.</summary>
/// <remarks>Asked a hundred thousand times for a stand that walks, so that it allocates nothing.</remarks>
internal sealed class FootBalance
{
    private readonly FootStiffness _stiffness;
    private readonly FootLaw _law;
    private readonly int _foot;
    private readonly double[] _own = new double[9];
    private readonly double[] _matrix = new double[9];
    private readonly double[] _side = new double[3];

    /// <param name="stiffness">The frame on its feet.</param>
    /// <param name="law">How the floor holds them.</param>
    /// <param name="foot">Which.</param>
    /// <param name="drag">[N/m] Added resistance.</param>
    public FootBalance(FootStiffness stiffness, FootLaw law, int foot, double drag)
    {
        (_stiffness, _law, _foot) = (stiffness, law, foot);
        var columns = stiffness.Columns(foot);
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                _own[(3 * i) + j] = Holds(i) && Holds(j) ? columns[(9 * foot) + (3 * i) + j] : 0;
            }

            _own[4 * i] += Holds(i) ? drag : 1;
        }
    }

    /// <summary>Where it comes to rest.</summary>
    /// <param name="force">[N] On it where it is.</param>
    /// <param name="at">[m] Where it is.</param>
    /// <param name="anchor">[m] Where it last stuck.</param>
    public Spot Rest(ReadOnlySpan<double> force, ReadOnlySpan<double> at, ReadOnlySpan<double> anchor)
    {
        var on = new Spot(Held(0, force[0]), Held(1, force[1]), Held(2, force[2]));
        var here = new Spot(at[0], at[1], at[2]);
        var stuck = new Spot(anchor[0], anchor[1], 0);
        var holding = Force(on, here, stuck);
        var level = Math.Sqrt((holding.X * holding.X) + (holding.Y * holding.Y));
        if (!_law.Rollers && (holding.Z >= 0 || !Holds(2)) && level <= _law.Friction * holding.Z)
        {
            return stuck;
        }

        (_side[0], _side[1], _side[2]) = (-on.X, -on.Y, -on.Z);
        _own.CopyTo(_matrix, 0);
        if (Holds(2) && SmallSystem.TrySolve(_matrix, _side) && here.Z + _side[2] >= 0)
        {
            return new Spot(here.X + _side[0], here.Y + _side[1], here.Z + _side[2]);
        }

        var down = Force(on, here, here with { Z = 0 });
        return _law.Rollers ? Rolled(here, down) : Slipped(here, down, stuck) ?? stuck;
    }

    private bool Holds(int direction) => _stiffness.Holds((3 * _foot) + direction);

    private double Held(int direction, double value) => Holds(direction) ? value : 0;

    private Spot Force(Spot on, Spot from, Spot to)
    {
        var (x, y, z) = (to.X - from.X, to.Y - from.Y, to.Z - from.Z);
        return new Spot(
            on.X + (_own[0] * x) + (_own[1] * y) + (_own[2] * z),
            on.Y + (_own[3] * x) + (_own[4] * y) + (_own[5] * z),
            on.Z + (_own[6] * x) + (_own[7] * y) + (_own[8] * z)
        );
    }

    private Spot Rolled(Spot here, Spot down)
    {
        var (x, y) = (
            FootLaw.RollerShare * _stiffness.Own[3 * _foot],
            FootLaw.RollerShare * _stiffness.Own[(3 * _foot) + 1]
        );
        return
            Level(_own[0] + x, _own[1], _own[3], _own[4] + y, -(down.X + (x * here.X)), -(down.Y + (y * here.Y)))
                is { } side
            ? new Spot(here.X + side.X, here.Y + side.Y, 0)
            : here;
    }

    // The way of the floor's force for which the foot slips straight against it, found by halving all round.
    private Spot? Slipped(Spot here, Spot down, Spot stuck)
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

        (double Cross, bool Against, Spot To) Across(double angle)
        {
            var (y, x) = Math.SinCos(angle);
            var (mx, my) = (_law.Friction * x, _law.Friction * y);
            var to = Level(
                _own[0] - (mx * _own[6]),
                _own[1] - (mx * _own[7]),
                _own[3] - (my * _own[6]),
                _own[4] - (my * _own[7]),
                (mx * down.Z) - down.X,
                (my * down.Z) - down.Y
            )
                is { } side
                ? new Spot(here.X + side.X, here.Y + side.Y, 0)
                : stuck;
            var (dx, dy) = (to.X - stuck.X, to.Y - stuck.Y);
            return ((dx * y) - (dy * x), (dx * x) + (dy * y) <= 0, to);
        }
    }

    // Two unknowns by Cramer's rule.
    private static (double X, double Y)? Level(double a, double b, double c, double d, double right, double other)
    {
        var determinant = (a * d) - (b * c);
        return Math.Abs(determinant) > 1e-14 * (Math.Abs(a * d) + Math.Abs(b * c))
            ? (((right * d) - (b * other)) / determinant, ((a * other) - (c * right)) / determinant)
            : null;
    }

    /// <summary>A place, or a force.</summary>
    /// <param name="X">[m] or [N] along.</param>
    /// <param name="Y">[m] or [N] across.</param>
    /// <param name="Z">[m] or [N] up.</param>
    internal readonly record struct Spot(double X, double Y, double Z);
}
