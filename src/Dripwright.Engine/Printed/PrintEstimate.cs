namespace Dripwright.Engine.Printed;

/// <summary>What a print takes.</summary>
/// <param name="Mass">[kg] Of the part, printed solid; less with sparse filling.</param>
/// <param name="FilamentLength">[m] Of filament, printed solid, without skirt and waste.</param>
public readonly record struct PrintEstimate(double Mass, double FilamentLength)
{
    /// <summary>Mass ρ V and length V / (π d²/4) of filament.</summary>
    /// <param name="volume">[m³] Of the part, 0 or more.</param>
    /// <param name="plastic">The plastic.</param>
    /// <param name="printer">The printer.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative.</exception>
    public static PrintEstimate Of(double volume, Plastic plastic, Printer printer)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(volume);
        return new(plastic.Density * volume, volume / (Math.PI / 4 * printer.Filament * printer.Filament));
    }
}
