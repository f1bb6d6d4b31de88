using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Catalogue.Salts;

/// <summary>A fertiliser, acid or base as it is sold: what a kilogram of it brings, and how it behaves in a stock can.</summary>
/// <remarks>Method page: docs/methods/formulas-and-salts.md</remarks>
public sealed record Salt
{
    /// <summary>The name by which a recipe asks for it, lower case with dashes.</summary>
    public required string Key { get; init; }

    /// <summary>What a person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>How it is handled.</summary>
    public required SaltKind Kind { get; init; }

    /// <summary>The compound in it; null where only the label's analysis is known.</summary>
    public Formula? Formula { get; init; }

    /// <summary>[-] Share of the compound in the product's mass: purity of a salt, strength of an acid.</summary>
    public double Purity { get; init; } = 1;

    /// <summary>[%] The label's guaranteed analysis by the names of <see cref="LabelForms"/>; empty where the formula counts.</summary>
    public IReadOnlyList<(string Name, double Percent)> Label { get; init; } = [];

    /// <summary>[mol/kg] What a kilogram of the product brings.</summary>
    public required Composition Brings { get; init; }

    /// <summary>[mol/kg] H⁺ that a kilogram sets free (phosphate as H2PO4⁻); negative for a base.</summary>
    public double AcidEquivalents { get; init; }

    /// <summary>[kg/m³] Density of a liquid at 20 °C; null for a solid.</summary>
    public double? Density { get; init; }

    /// <summary>[-] Least and greatest pH at which a chelate holds its metal; null for others.</summary>
    public (double Least, double Most)? PHRange { get; init; }

    /// <summary>Solubility of the compound; null where unknown or where it mixes with water in any ratio.</summary>
    public SolubilityCurve? Solubility { get; init; }

    /// <summary>In which concentrate it may stand.</summary>
    public required StockPart Part { get; init; }

    /// <summary>[kg] Content of one pack; null where unknown.</summary>
    public double? Pack { get; init; }

    /// <summary>[money] Price of one pack in the catalogue's currency; null where unknown.</summary>
    public decimal? Price { get; init; }

    /// <summary>[money/kg] Price of a kilogram as a rig gives it; it goes before that of the pack. Null where the rig gives none.</summary>
    public decimal? LoosePrice { get; init; }

    /// <summary>What it can do to people, stores and water.</summary>
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];

    /// <summary>Whether it is the grower's own bag or bottle of feed, known by its label; its iron counts as chelated.</summary>
    public bool IsBag { get; init; }

    /// <summary>[kg/kg] Nitrogen as urea, which is not counted in what it brings.</summary>
    public double UreaNitrogen { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required string Source { get; init; }

    /// <summary>How sure they are.</summary>
    public required Sureness Sure { get; init; }

    /// <summary>The row as its file words it, from which another may start.</summary>
    internal SaltRow? Row { get; init; }

    /// <summary>[money/kg] Price of a kilogram in the catalogue's currency; null where price or pack is unknown.</summary>
    public decimal? PricePerKilogram =>
        LoosePrice ?? (Price is { } price && Pack is > 0 and { } mass ? price / (decimal)mass : null);

    /// <summary>[mol/m³] Moles of the compound in a cubic metre of a liquid; null for solids and label-only products.</summary>
    /// <example>Nitric acid 38 %, 1233 kg/m³: 7435 mol/m³, which is 7.435 mol/L.</example>
    public double? Molarity => Formula is { } formula ? Density * Purity / formula.MolarMass : null;

    /// <summary>[kg/kg] Mass of an element, ion or oxide in a kilogram of the product.</summary>
    /// <param name="constituent">What is counted.</param>
    /// <param name="form">Formula of the form; null for the element.</param>
    public double MassFraction(Constituent constituent, string? form = null) =>
        Brings[constituent] * Forms.MassPerMole(constituent, form);

    /// <summary>Volume of an acid (or base) that gives off (or takes up) an amount of H⁺.</summary>
    /// <param name="amount">[mol] H⁺; for 1 m³ of water the same number as meq/L.</param>
    /// <returns>[m³] Volume from the bottle; null where this is no liquid acid or base.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The amount is negative or not finite.</exception>
    /// <example>1 mol of H⁺ from nitric acid 38 %: 134.5 mL.</example>
    public double? VolumeFor(double amount)
    {
        Guard.NotNegative(amount);
        return Density is { } density && AcidEquivalents != 0 ? amount / Math.Abs(AcidEquivalents) / density : null;
    }
}
