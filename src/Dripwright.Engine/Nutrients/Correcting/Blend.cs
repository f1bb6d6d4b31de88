namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>Mixing by volumes: C1 V1 + C2 V2 = C V. For amounts it is exact; for EC it is good to about 5 %.</summary>
/// <remarks>
/// EC does not add up exactly because ions slow one another (Kohlrausch), so a correction ends with a reading.
/// Textbook. Method page: docs/methods/tank-correction.md
/// </remarks>
public static class Blend
{
    /// <summary>Strength of two volumes together.</summary>
    /// <param name="volume">[m³] The first volume.</param>
    /// <param name="strength">[dS/m or mol/m³] Its strength.</param>
    /// <param name="added">[m³] The second volume.</param>
    /// <param name="addedStrength">[dS/m or mol/m³] Its strength.</param>
    /// <returns>[dS/m or mol/m³] Strength of both.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or both volumes are nought.</exception>
    public static double Mixed(double volume, double strength, double added, double addedStrength)
    {
        Guard.NotNegative(volume);
        Guard.NotNegative(strength);
        Guard.NotNegative(added);
        Guard.NotNegative(addedStrength);
        return ((volume * strength) + (added * addedStrength)) / Guard.Positive(volume + added, nameof(volume));
    }

    /// <summary>What must be added to bring a volume to a strength between its own and that of what is added.</summary>
    /// <param name="volume">[m³] The volume there is.</param>
    /// <param name="strength">[dS/m or mol/m³] Its strength.</param>
    /// <param name="addedStrength">[dS/m or mol/m³] Strength of what is added.</param>
    /// <param name="target">[dS/m or mol/m³] Strength wanted.</param>
    /// <returns>[m³] Volume to add.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or the target does not lie between.</exception>
    public static double ToAdd(double volume, double strength, double addedStrength, double target)
    {
        Guard.NotNegative(volume);
        Guard.NotNegative(strength);
        Guard.NotNegative(addedStrength);
        if (target == strength)
        {
            return 0;
        }

        var share = (target - strength) / (addedStrength - target);
        if (!(share > 0 && double.IsFinite(share)))
        {
            throw new ArgumentOutOfRangeException(nameof(target), target, "The target does not lie between the two.");
        }

        return volume * share;
    }

    /// <summary>Strength of what is left when water alone has gone.</summary>
    /// <param name="volume">[m³] The volume before.</param>
    /// <param name="strength">[dS/m or mol/m³] Its strength.</param>
    /// <param name="lost">[m³] Water gone, less than the volume.</param>
    /// <returns>[dS/m or mol/m³] Strength afterwards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or nothing is left.</exception>
    public static double Evaporated(double volume, double strength, double lost)
    {
        Guard.Positive(volume);
        Guard.NotNegative(strength);
        Guard.NotNegative(lost);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lost, volume);
        return strength * volume / (volume - lost);
    }

    /// <summary>What must be taken out and replaced, as a share of the tank, to bring one strength down to a limit.</summary>
    /// <param name="strength">[dS/m or mol/m³] What the tank holds.</param>
    /// <param name="refill">[dS/m or mol/m³] What the refill holds.</param>
    /// <param name="limit">[dS/m or mol/m³] What it shall hold at most.</param>
    /// <returns>[-] Share, 0 when the limit is kept already, 1 when the refill is at the limit itself.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative, or the refill itself is over the limit.</exception>
    public static double RefillShare(double strength, double refill, double limit)
    {
        Guard.NotNegative(strength);
        Guard.NotNegative(refill);
        Guard.NotNegative(limit);
        if (strength <= limit)
        {
            return 0;
        }

        ArgumentOutOfRangeException.ThrowIfGreaterThan(refill, limit);
        return (strength - limit) / (strength - refill);
    }
}
