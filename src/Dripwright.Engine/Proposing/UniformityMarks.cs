namespace Dripwright.Engine.Proposing;

/// <summary>The steps of uniformity at which a rig is proposed: for each, the cheapest rig that reaches it.</summary>
/// <remarks>
/// Such rigs lie on the front of cost against uniformity, and there are never more of them than a person can compare. The
/// lowest is the least that a plan passes without a finding to mend.
/// </remarks>
public static class UniformityMarks
{
    /// <summary>[-] Design emission uniformity, rising.</summary>
    public static IReadOnlyList<double> All { get; } = [0.85, 0.88, 0.90, 0.92, 0.94, 0.95, 0.96, 0.97];

    /// <summary>Index of the highest mark that an uniformity reaches; -1 where it reaches none.</summary>
    /// <param name="uniformity">[-] Design emission uniformity.</param>
    public static int Reached(double uniformity)
    {
        var reached = -1;
        while (reached + 1 < All.Count && uniformity >= All[reached + 1])
        {
            reached++;
        }

        return reached;
    }
}
