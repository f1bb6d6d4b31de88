using Dripwright.Engine.Physics;

namespace Dripwright.Engine.Water;

/// <summary>How much of a reservoir can be used, and how long it lasts.</summary>
/// <remarks>Method page: docs/methods/reservoir-days.md</remarks>
public static class ReservoirDays
{
    /// <summary>Water between the lowest level that is to be kept and a level.</summary>
    /// <param name="shape">Inside shape of the reservoir.</param>
    /// <param name="keptLevel">[m] Lowest level to be kept (pump inlet covered), 0 to the height.</param>
    /// <param name="level">[m] Present level, 0 to the height.</param>
    /// <returns>[m³] Volume; 0 when the level is not over the kept one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A level lies outside the vessel.</exception>
    public static double WorkingVolume(VesselShape shape, double keptLevel, double level)
    {
        ArgumentNullException.ThrowIfNull(shape);
        return Math.Max(shape.VolumeAt(level) - shape.VolumeAt(keptLevel), 0);
    }

    /// <summary>Days until the working volume is used up, with no topping up.</summary>
    /// <param name="workingVolume">[m³] Working volume, 0 or more.</param>
    /// <param name="litresPerPlantPerDay">[L/d] Water one plant takes up in a day, over 0.</param>
    /// <param name="plants">Count of plants, 1 or more.</param>
    /// <returns>[d] Days.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double Days(double workingVolume, double litresPerPlantPerDay, int plants)
    {
        Guard.NotNegative(workingVolume);
        Guard.Positive(litresPerPlantPerDay);
        ArgumentOutOfRangeException.ThrowIfLessThan(plants, 1);
        return workingVolume * 1000 / (litresPerPlantPerDay * plants);
    }

    /// <summary>Time until the pump draws air when what it pumps no longer comes back.</summary>
    /// <remarks>
    /// A feed line that has come off, or a blocked drain. The pump's flow is taken as constant; as the level falls it
    /// lifts a little higher and gives a little less, so the true time is somewhat longer.
    /// </remarks>
    /// <param name="workingVolume">[m³] Water over the pump's inlet or the level at which it stops, 0 or more.</param>
    /// <param name="flow">[m³/s] What leaves and does not return, over 0.</param>
    /// <returns>[s] Time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside the range above.</exception>
    public static double TimeToEmpty(double workingVolume, double flow) =>
        Guard.NotNegative(workingVolume) / Guard.Positive(flow);
}
