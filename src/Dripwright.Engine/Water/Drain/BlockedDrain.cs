using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>A pot over a drain that is blocked. Heights are over the pipe's lowest inside point at its outlet.</summary>
/// <param name="Distance">[m] Distance from the pipe's high end.</param>
/// <param name="Inflow">[m³/s] What the pot sends down, 0 or more.</param>
/// <param name="SillHeight">[m] Height of the pot's outlet.</param>
/// <param name="RimHeight">[m] Height of the pot's rim, at least that of the sill.</param>
/// <param name="RoomOverSill">[m³] Free volume between sill and rim, 0 or more.</param>
/// <param name="JointHeight">[m] Height at which the elbow's joint with the pipe leaks; null for a sealed joint.</param>
public sealed record BlockedPot(
    double Distance,
    double Inflow,
    double SillHeight,
    double RimHeight,
    double RoomOverSill,
    double? JointHeight
)
{
    /// <summary>[m] Height at which water comes out here: the rim, or the joint if that leaks and lies lower.</summary>
    public double SpillHeight => Math.Min(RimHeight, JointHeight ?? RimHeight);
}

/// <summary>What a blockage does.</summary>
/// <param name="Pot">Number of the pot that spills first, as in the list given; null when the vent does, or nothing can.</param>
/// <param name="AtVent">True when the vent at the high end spills first.</param>
/// <param name="SpillHeight">[m] Level at which it spills; null when nothing can.</param>
/// <param name="Time">[s] Time from the blockage to the spill; null when there is no inflow above it or nothing can spill.</param>
/// <param name="HeldVolume">[m³] Water that pipe and pots take up until then.</param>
/// <param name="PondedPots">Numbers of the pots in which water stands over the sill when it spills.</param>
public sealed record BlockedDrainResult(
    int? Pot,
    bool AtVent,
    double? SpillHeight,
    double? Time,
    double HeldVolume,
    IReadOnlyList<int> PondedPots
);

/// <summary>Where and when water first comes out if a drain pipe is stopped up at one point.</summary>
/// <remarks>
/// Above the blockage, pipe and pots fill like vessels that are joined: one level, rising slowly enough for friction not
/// to count. The lowest opening spills, the one nearest the blockage when several are as low. Between sill and rim a
/// pot is taken to fill evenly with height. Method page: docs/methods/pot-drain.md
/// </remarks>
public static class BlockedDrain
{
    private const int Slices = 1000;

    /// <summary>Follows the filling.</summary>
    /// <param name="run">The drain pipe; its own inflows are not used, the pots bring theirs.</param>
    /// <param name="pots">The pots, in any order.</param>
    /// <param name="blockedAt">[m] Place of the blockage from the high end, 0 to the pipe's length.</param>
    /// <param name="ventHeight">[m] Height of the vent's mouth at the high end over the pipe's lowest inside point at its outlet; null for a capped end.</param>
    /// <param name="waterAlready">[m³] Water already in the pipe above the blockage, 0 or more.</param>
    /// <returns>The outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its stated range.</exception>
    public static BlockedDrainResult Follow(
        DrainRun run,
        IReadOnlyList<BlockedPot> pots,
        double blockedAt,
        double? ventHeight = null,
        double waterAlready = 0
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(pots);
        run.Check();
        Guard.Between(blockedAt, 0, run.Length);
        Guard.NotNegative(waterAlready);
        var (first, inflow) = FirstToSpill(pots, blockedAt);
        var atVent = ventHeight is { } vent && (first is not { } pot || vent < pots[pot].SpillHeight);
        if (first is null && !atVent)
        {
            return new BlockedDrainResult(null, false, null, null, 0, []);
        }

        var height = atVent ? ventHeight!.Value : pots[first!.Value].SpillHeight;
        var held = PipeVolumeTo(run, blockedAt, height);
        var ponded = new List<int>();
        for (var i = 0; i < pots.Count; i++)
        {
            if (pots[i].Distance <= blockedAt && pots[i].SillHeight < height)
            {
                ponded.Add(i);
                held += PotVolumeTo(pots[i], height);
            }
        }

        double? time = inflow > 0 ? Math.Max(held - waterAlready, 0) / inflow : null;
        return new BlockedDrainResult(atVent ? null : first, atVent, height, time, held, ponded);
    }

    private static (int? Pot, double Inflow) FirstToSpill(IReadOnlyList<BlockedPot> pots, double blockedAt)
    {
        int? first = null;
        var inflow = 0.0;
        for (var i = 0; i < pots.Count; i++)
        {
            var pot = pots[i];
            Guard.Finite(pot.SillHeight, nameof(pots));
            Guard.Finite(pot.SpillHeight, nameof(pots));
            ArgumentOutOfRangeException.ThrowIfLessThan(pot.RimHeight, pot.SillHeight, nameof(pots));
            Guard.NotNegative(pot.RoomOverSill, nameof(pots));
            if (pot.Distance > blockedAt)
            {
                continue;
            }

            inflow += Guard.NotNegative(pot.Inflow, nameof(pots));
            var lower =
                first is not { } best
                || pot.SpillHeight < pots[best].SpillHeight
                || (pot.SpillHeight == pots[best].SpillHeight && pot.Distance > pots[best].Distance);
            first = lower ? i : first;
        }

        return (first, inflow);
    }

    private static double PotVolumeTo(BlockedPot pot, double height)
    {
        var span = pot.RimHeight - pot.SillHeight;
        var part = span > 0 ? Math.Min((height - pot.SillHeight) / span, 1) : 1;
        return part * pot.RoomOverSill;
    }

    private static double PipeVolumeTo(DrainRun run, double blockedAt, double height)
    {
        var volume = 0.0;
        for (var i = 0; i < Slices; i++)
        {
            var distance = (i + 0.5) * blockedAt / Slices;
            var depth = Math.Clamp(height - run.Slope * (run.Length - distance), 0, run.Diameter);
            volume += CircularSection.Area(depth, run.Diameter) * blockedAt / Slices;
        }

        return volume;
    }
}
