using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Nutrients.Recipe;

/// <summary>How concentrates are made and kept.</summary>
public sealed record StockJob
{
    /// <summary>The feed that the concentrates make.</summary>
    public required NutrientRecipe Recipe { get; init; }

    /// <summary>[-] One part of concentrate in this many parts of feed, the concentrate counted in: 100 is 10 mL in a litre of
    /// feed. An injector marked by parts of water has one less.</summary>
    public double PartsOfFeed { get; init; } = 100;

    /// <summary>[m³] Feed that one filling of the cans is to make.</summary>
    public double Feed { get; init; } = 1;

    /// <summary>[K] The coldest that the cans are stored at.</summary>
    public double Temperature { get; init; } = 283.15;

    /// <summary>[-] pH of the concentrates; monopotassium phosphate alone makes about 4.5 (from memory).</summary>
    public double PH { get; init; } = 4.5;

    /// <summary>False for all in one can.</summary>
    public bool TwoCans { get; init; } = true;
}

/// <summary>One fertiliser in a can.</summary>
/// <param name="Salt">Which.</param>
/// <param name="Concentration">[kg/m³] In the concentrate; the same number as g/L.</param>
/// <param name="Mass">[kg] In the whole can.</param>
/// <param name="Weighed">[kg] The same, rounded to the scale or the measure.</param>
/// <param name="Measured">[m³] What to measure out of a liquid, rounded; null for a solid.</param>
public sealed record CanLine(Salt Salt, double Concentration, double Mass, double Weighed, double? Measured);

/// <summary>One can of concentrate.</summary>
/// <param name="Name">A, B, or 1 where there is one for all.</param>
/// <param name="Volume">[m³] What it is filled up to.</param>
/// <param name="Lines">What goes in.</param>
/// <param name="Contents">[mol/m³] What the concentrate holds, its water's part in it.</param>
/// <param name="Saturations">[-] How near its salts are to crystallising, the nearest first.</param>
/// <param name="Precipitates">[-] Gypsum and calcium phosphate.</param>
public sealed record StockCan(
    string Name,
    double Volume,
    IReadOnlyList<CanLine> Lines,
    Composition Contents,
    IReadOnlyList<CanSaturation> Saturations,
    IReadOnlyList<Saturation> Precipitates
)
{
    /// <summary>[-] The share of the salt nearest to crystallising; 0 for an empty can.</summary>
    public double Fullness => Saturations.Count > 0 ? Saturations[0].Share : 0;

    /// <summary>True when nothing crystallises, with the margin of common practice, and nothing falls out.</summary>
    public bool Keeps =>
        Fullness <= RuleBook.Limit("stock-saturated") && Precipitates.All(solid => solid.SaturationIndex <= 0);
}

/// <summary>Concentrates for a feed.</summary>
/// <param name="Job">What was asked.</param>
/// <param name="Cans">The cans: A and B, or one.</param>
/// <param name="MostParts">[-] Greatest number of parts of feed at which the cans still keep; null where not even 2 does.</param>
/// <param name="InjectorPercent">[%] Setting of each injector head, concentrate in the whole feed.</param>
/// <param name="DosePerLitre">[m³/m³] Concentrate from each can in a cubic metre of feed.</param>
/// <param name="Findings">What is to be said.</param>
public sealed record StockPlan(
    StockJob Job,
    IReadOnlyList<StockCan> Cans,
    double? MostParts,
    double InjectorPercent,
    double DosePerLitre,
    IReadOnlyList<Finding> Findings
)
{
    /// <summary>True when every can keeps.</summary>
    public bool Keeps => Cans.All(can => can.Keeps);
}
