namespace Dripwright.Engine.Stands.Frame;

/// <summary>Takes the feet from the loads that rest on the stand to those that come after, in steps.</summary>
/// <remarks>
/// Coulomb's law: a foot lifts or presses, and while it presses the level force on it stays within friction times what
/// presses; it slips against that force only where the force is all it can be. Friction remembers: what a step left behind
/// is where the next begins. The first step is exact, since loads that grow from nothing together keep their way; where the
/// end of a straight way lies within the cone of every foot, so does all between, and there is nothing to follow.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
internal sealed class FootPath
{
    private readonly FootStiffness _stiffness;
    private readonly FootLaw _law;
    private readonly double[] _resting;
    private readonly double[] _all;
    private readonly double _size;

    /// <summary>A path of loads, given as what the floor would put on feet that stay where they stand.</summary>
    /// <param name="stiffness">The frame on its feet.</param>
    /// <param name="law">How the floor holds them.</param>
    /// <param name="resting">[N] Under the loads that rest on the stand; three a foot.</param>
    /// <param name="all">[N] Under all loads; three a foot.</param>
    public FootPath(FootStiffness stiffness, FootLaw law, double[] resting, double[] all)
    {
        (_stiffness, _law, _resting, _all) = (stiffness, law, resting, all);
        _size = Math.Max(resting.Sum(Math.Abs), all.Sum(Math.Abs));
    }

    /// <summary>Follows the path.</summary>
    /// <param name="steps">Steps for the loads that come after; 1 or more.</param>
    public FeetAtRest Follow(int steps)
    {
        var state = new FootStep(_stiffness, _law, _size);
        if (Inside(_all) && Inside(_resting))
        {
            return state.Rest();
        }

        if (_resting.Any(r => r != 0) && !Inside(_resting) && !state.Move(_resting))
        {
            return state.Rest();
        }

        var force = new double[_all.Length];
        var all = _law.Rollers ? 1 : steps;
        for (var step = 1; step <= all; step++)
        {
            for (var i = 0; i < force.Length; i++)
            {
                force[i] = _resting[i] + ((_all[i] - _resting[i]) * step / all);
            }

            if (!state.Move(force))
            {
                break;
            }
        }

        return state.Rest();
    }

    // Whether feet that stay where they stand bear these forces.
    private bool Inside(double[] force)
    {
        if (_law.Rollers)
        {
            return false;
        }

        var least = 1e-9 * _size;
        for (var i = 0; i < force.Length; i += 3)
        {
            var level = Math.Sqrt((force[i] * force[i]) + (force[i + 1] * force[i + 1]));
            var presses = force[i + 2];
            if (_stiffness.Holds(i + 2) && presses < -least)
            {
                return false;
            }

            if (!double.IsPositiveInfinity(_law.Friction) && level > (_law.Friction * Math.Max(presses, 0)) + least)
            {
                return false;
            }
        }

        return true;
    }
}
