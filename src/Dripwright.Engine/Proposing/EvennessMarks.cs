namespace Dripwright.Engine.Proposing;

/// <summary>The steps of evenness at which a rig is proposed: for each, the cheapest rig that reaches it.</summary>
/// <remarks>
/// Such rigs lie on the front of cost against evenness, and there are never more of them than a person can compare. The
/// lowest is the least that a plan passes without a finding to mend.
/// </remarks>
public static class EvennessMarks
{
    /// <summary>[-] Design emission uniformity, rising.</summary>
    public static IReadOnlyList<double> All { get; } = [0.85, 0.88, 0.90, 0.92, 0.94, 0.95, 0.96, 0.97];

    /// <summary>Index of the highest mark that an evenness reaches; -1 where it reaches none.</summary>
    /// <param name="evenness">[-] Design emission uniformity.</param>
    public static int Reached(double evenness)
    {
        int reached = -1;
        while (reached + 1 < All.Count && evenness >= All[reached + 1])
        {
            reached++;
        }

        return reached;
    }
}
