namespace Dripwright.Engine.Layout;

/// <summary>Finds holes that lie on a fitting or a module joint.</summary>
internal static class HoleClearance
{
    /// <summary>Every conflict on a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="joints">[m] Stations of the module joints; empty for a run that does not lie on a stand.</param>
    /// <param name="jointHalf">[m] Half width of a module joint: half the stand tube's outside.</param>
    public static IEnumerable<HoleConflict> Check(PipeRun run, IReadOnlyList<double> joints, double jointHalf)
    {
        int fitting = 0;
        int joint = 0;
        foreach (Hole hole in run.Holes)
        {
            double radius = hole.Diameter / 2;
            fitting = Skip(run.Fittings.Count, fitting, i => run.Fittings[i].Station, hole.Station);
            foreach (int i in (int[])[fitting - 1, fitting])
            {
                if (
                    i >= 0
                    && i < run.Fittings.Count
                    && Cure(hole.Station, radius, run.Fittings[i].Station, run.Fittings[i].Reach) is { } shift
                )
                {
                    string name = run.Fittings[i].Type.Kind.ToString().ToLowerInvariant();
                    yield return new HoleConflict(run.Label, hole, $"{name} {run.Fittings[i].Label}", shift);
                }
            }

            joint = Skip(joints.Count, joint, i => joints[i], hole.Station);
            foreach (int i in (int[])[joint - 1, joint])
            {
                if (i >= 0 && i < joints.Count && Cure(hole.Station, radius, joints[i], jointHalf) is { } shift)
                {
                    yield return new HoleConflict(run.Label, hole, $"module joint {Text.Of(i + 1)}", shift);
                }
            }
        }
    }

    private static int Skip(int count, int from, Func<int, double> station, double hole)
    {
        int i = from;
        while (i < count && station(i) < hole)
        {
            i++;
        }

        return i;
    }

    private static double? Cure(double hole, double radius, double centre, double half)
    {
        double apart = hole - centre;
        double missing = half + radius - Math.Abs(apart);
        // A micrometre of overlap is rounding, not a fault.
        return missing > 1e-6 ? (apart >= 0 ? missing : -missing) : null;
    }
}
