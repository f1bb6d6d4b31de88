namespace Dripwright.Engine.Printed;

/// <summary>The printer: what it lays down and how much room it has.</summary>
/// <remarks>The values given are those of a common desk printer.</remarks>
public sealed record Printer
{
    /// <summary>[m] Bore of the nozzle, which is about the width of one line.</summary>
    public double Nozzle { get; init; } = 0.0004;

    /// <summary>[m] Height of a layer.</summary>
    public double Layer { get; init; } = 0.0002;

    /// <summary>[m] Width of the bed.</summary>
    public double BedWidth { get; init; } = 0.220;

    /// <summary>[m] Depth of the bed.</summary>
    public double BedDepth { get; init; } = 0.220;

    /// <summary>[m] Greatest height of a print.</summary>
    public double Height { get; init; } = 0.250;

    /// <summary>[m] Diameter of the filament.</summary>
    public double Filament { get; init; } = 0.00175;
}
