namespace Dripwright.Workbench.Work;

/// <summary>How many draws of the spread are made, on the pages and over HTTP alike.</summary>
internal static class SpreadDraws
{
    private const int Most = 10_000;

    /// <summary>Draws for so many pots: each draw solves all of them, so a large rig gets fewer.</summary>
    /// <param name="pots">Pots, 1 or more.</param>
    public static int For(int pots) => Math.Clamp(400_000 / pots, 500, Most);
}
