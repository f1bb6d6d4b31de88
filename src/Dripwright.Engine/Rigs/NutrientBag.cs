using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>A bag or bottle of feed as its label has it: the guaranteed analysis in percent of mass.</summary>
public sealed record NutrientBag
{
    private const string None = "not on the label";

    /// <summary>What the grower calls it.</summary>
    [Text(60), Says("What you call it: \"tomato feed\", \"calcium nitrate\".")]
    public string Name { get; init; } = "";

    /// <summary>[-] All nitrogen.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Total nitrogen (N).")]
    public double? N { get; init; }

    /// <summary>[-] Nitrogen as nitrate.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Nitrate nitrogen, where the label has it.")]
    public double? NitrateN { get; init; }

    /// <summary>[-] Nitrogen as ammonium.</summary>
    [
        Quantity(Dimension.Share, "0 %", "50 %"),
        FoundByPlan(None),
        Says("Ammonium (ammoniacal) nitrogen, where the label has it.")
    ]
    public double? AmmoniumN { get; init; }

    /// <summary>[-] Nitrogen as urea.</summary>
    [
        Quantity(Dimension.Share, "0 %", "50 %"),
        FoundByPlan(None),
        Says("Urea nitrogen, where the label has it; it feeds nothing in a tank and is not counted.")
    ]
    public double? UreaN { get; init; }

    /// <summary>[-] Phosphate as P2O5.</summary>
    [Quantity(Dimension.Share, "0 %", "80 %"), FoundByPlan(None), Says("Available phosphate (P2O5).")]
    public double? P2o5 { get; init; }

    /// <summary>[-] Potash as K2O.</summary>
    [Quantity(Dimension.Share, "0 %", "80 %"), FoundByPlan(None), Says("Soluble potash (K2O).")]
    public double? K2o { get; init; }

    /// <summary>[-] Calcium.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Calcium (Ca).")]
    public double? Ca { get; init; }

    /// <summary>[-] Calcium as CaO.</summary>
    [Quantity(Dimension.Share, "0 %", "60 %"), FoundByPlan(None), Says("Calcium as CaO, in its place.")]
    public double? Cao { get; init; }

    /// <summary>[-] Magnesium.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Magnesium (Mg).")]
    public double? Mg { get; init; }

    /// <summary>[-] Magnesium as MgO.</summary>
    [Quantity(Dimension.Share, "0 %", "60 %"), FoundByPlan(None), Says("Magnesium as MgO, in its place.")]
    public double? Mgo { get; init; }

    /// <summary>[-] Sulfur.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Sulfur (S).")]
    public double? S { get; init; }

    /// <summary>[-] Sulfur as SO3.</summary>
    [Quantity(Dimension.Share, "0 %", "80 %"), FoundByPlan(None), Says("Sulfur as SO3, in its place.")]
    public double? So3 { get; init; }

    /// <summary>[-] Chloride.</summary>
    [Quantity(Dimension.Share, "0 %", "50 %"), FoundByPlan(None), Says("Chlorine (Cl).")]
    public double? Cl { get; init; }

    /// <summary>[-] Iron.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Iron (Fe).")]
    public double? Fe { get; init; }

    /// <summary>[-] Manganese.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Manganese (Mn).")]
    public double? Mn { get; init; }

    /// <summary>[-] Zinc.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Zinc (Zn).")]
    public double? Zn { get; init; }

    /// <summary>[-] Copper.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Copper (Cu).")]
    public double? Cu { get; init; }

    /// <summary>[-] Boron.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Boron (B).")]
    public double? B { get; init; }

    /// <summary>[-] Molybdenum.</summary>
    [Quantity(Dimension.Share, "0 %", "20 %"), FoundByPlan(None), Says("Molybdenum (Mo).")]
    public double? Mo { get; init; }

    /// <summary>[kg] Mass of a litre of a liquid.</summary>
    [
        Quantity(Dimension.Mass, "0.5 kg", "3 kg"),
        FoundByPlan("it is no liquid"),
        Says("What one litre weighs, for a liquid; it is then measured in mL.")
    ]
    public double? MassOfLitre { get; init; }

    /// <summary>[money/kg] Price of a kilogram in the currency of the catalogue.</summary>
    [Price, FoundByPlan("not known"), Says("Price of a kilogram, in the catalogue's currency.")]
    public decimal? PricePerKg { get; init; }

    /// <summary>[kg] How much of it there is; null where it is bought as needed.</summary>
    [
        Quantity(Dimension.Mass, "0 g", "10000 kg"),
        FoundByPlan("as much as it takes, to be bought"),
        Says("How much of it you have: the recipe takes no more, and nothing of it is bought.")
    ]
    public double? Have { get; init; }
}
