namespace Dripwright.Engine.Rigs;

/// <summary>Plastic of printed parts.</summary>
public enum PrintPlastic
{
    /// <summary>Easy to print; creeps in warmth.</summary>
    Pla,

    /// <summary>Tough, takes water well.</summary>
    Petg,

    /// <summary>Stands heat.</summary>
    Abs,

    /// <summary>Stands heat and sun.</summary>
    Asa,
}

/// <summary>How the stand's printed parts are printed.</summary>
public sealed record Printing
{
    /// <summary>[m] Outside of the tube as measured.</summary>
    [
        Quantity(Dimension.Length, "5 mm", "100 mm"),
        FoundByPlan("as the catalogue says of the stand's tube"),
        Says("Outside of your tube, measured with a caliper.")
    ]
    public double? TubeOutside { get; init; }

    /// <summary>[m] Gap on each side between tube and socket.</summary>
    [
        Quantity(Dimension.Length, "-0.5 mm", "1 mm", Us = "0.2 mm"),
        Says("Gap on each side between tube and socket; the coupon finds the one that fits.")
    ]
    public double Clearance { get; init; } = 0.0002;

    /// <summary>[m] Bore of the nozzle.</summary>
    [Quantity(Dimension.Length, "0.2 mm", "1.2 mm", Us = "0.4 mm"), Says("Bore of the printer's nozzle.")]
    public double Nozzle { get; init; } = 0.0004;

    /// <summary>[m] Height of a layer.</summary>
    [Quantity(Dimension.Length, "0.05 mm", "0.8 mm", Us = "0.2 mm"), Says("Height of a printed layer.")]
    public double Layer { get; init; } = 0.0002;

    /// <summary>[m] Width of the bed.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "220 mm"), Says("Width of the printer's bed.")]
    public double BedWidth { get; init; } = 0.22;

    /// <summary>[m] Depth of the bed.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "220 mm"), Says("Depth of the printer's bed.")]
    public double BedDepth { get; init; } = 0.22;

    /// <summary>[m] Greatest height of a print.</summary>
    [Quantity(Dimension.Length, "80 mm", "1000 mm", Us = "250 mm"), Says("Greatest height that the printer prints.")]
    public double BedHeight { get; init; } = 0.25;

    /// <summary>The plastic.</summary>
    [Choice("petg"), Says("Plastic of the printed parts.")]
    public PrintPlastic Plastic { get; init; } = PrintPlastic.Petg;

    /// <summary>[K] Of the parts on the warmest day.</summary>
    [
        Quantity(Dimension.Temperature, "32 F", "180 F", Us = "95 F", Metric = "35 C"),
        Says("Warmest that the printed parts get; in the sun they are warmer than the air.")
    ]
    public double Warmest { get; init; } = 308.15;
}
