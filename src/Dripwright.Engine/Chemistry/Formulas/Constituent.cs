namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>
/// What a solution is counted in: totals that adding a salt, water or acid changes by plain sums. How each is divided among
/// its ions at a given pH is not said here.
/// </summary>
public enum Constituent
{
    /// <summary>Nitrogen as nitrate.</summary>
    NitrateNitrogen,

    /// <summary>Nitrogen as ammonium (and the little ammonia that goes with it).</summary>
    AmmoniumNitrogen,

    /// <summary>Phosphorus as phosphate.</summary>
    Phosphorus,

    /// <summary>Potassium.</summary>
    Potassium,

    /// <summary>Calcium.</summary>
    Calcium,

    /// <summary>Magnesium.</summary>
    Magnesium,

    /// <summary>Sulfur as sulfate.</summary>
    Sulfur,

    /// <summary>Sodium.</summary>
    Sodium,

    /// <summary>Chloride.</summary>
    Chloride,

    /// <summary>Silicon as silicic acid.</summary>
    Silicon,

    /// <summary>Inorganic carbon: dissolved carbon dioxide, bicarbonate and carbonate.</summary>
    InorganicCarbon,

    /// <summary>Iron, free or in a chelate.</summary>
    Iron,

    /// <summary>Manganese, free or in a chelate.</summary>
    Manganese,

    /// <summary>Zinc, free or in a chelate.</summary>
    Zinc,

    /// <summary>Copper, free or in a chelate.</summary>
    Copper,

    /// <summary>Boron as boric acid.</summary>
    Boron,

    /// <summary>Molybdenum as molybdate.</summary>
    Molybdenum,
}
