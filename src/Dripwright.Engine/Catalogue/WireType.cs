using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>Wire or small rope for the crop to hang on.</summary>
public sealed record WireType : CatalogueEntry
{
    /// <summary>[m] Outside diameter.</summary>
    [Quantity(Dimension.Length, "0.5 mm", "20 mm"), Says("Outside diameter.")]
    public required double Diameter { get; init; }

    /// <summary>[N] Least breaking force.</summary>
    [Quantity(Dimension.Force, "10 lbf", "100000 lbf"), Says("Least breaking force.")]
    public required double BreakingForce { get; init; }

    /// <summary>[N] Axial stiffness: elastic modulus times the steel's area.</summary>
    [Quantity(Dimension.Force, "500 lbf", "1e8 lbf"), Says("Axial stiffness: elastic modulus times the steel's area.")]
    public required double Stiffness { get; init; }

    /// <summary>[kg/m] Mass of one metre.</summary>
    [Quantity(Dimension.Mass, "0.5 g", "10 kg"), Formerly("massKgPerMetre"), Says("Mass of one metre.")]
    public required double MassOfMetre { get; init; }

    /// <summary>[m] Length of one roll.</summary>
    [Quantity(Dimension.Length, "1 ft", "10000 ft"), Says("Length of one roll.")]
    public required double Roll { get; init; }
}
