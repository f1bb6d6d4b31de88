using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Catalogue;

/// <summary>A crop: all that a plan takes from what grows in a pot.</summary>
/// <remarks>
/// Growers write crops in their own words; <see cref="PartsCatalogue.CropFor"/> finds the row. What each stage is fed stands in
/// the catalogue's stages, by this key.
/// </remarks>
public sealed record CropType : CatalogueRow
{
    /// <summary>Key of the row that stands for every crop that has none of its own.</summary>
    public const string Other = "other";

    /// <summary>Words it is known by beside key and name; upper and lower case are alike.</summary>
    [Items(0, 40), Text(40), Says("Other words you call it by: \"tomatoes\", \"cherry tomato\".")]
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>[m] Usual distance from pot to pot, in a rig in US units.</summary>
    [Quantity(Dimension.Length, "2 in", "10 ft"), Says("Usual distance from pot centre to pot centre.")]
    public required double Spacing { get; init; }

    /// <summary>[m] The same rounded for a rig in metric units; null where it is <see cref="Spacing"/>.</summary>
    [
        Quantity(Dimension.Length, "2 in", "10 ft"),
        FoundByPlan("the spacing"),
        Says("The same as you would measure it in a metric rig.")
    ]
    public double? MetricSpacing { get; init; }

    /// <summary>[kg] One loaded plant as it hangs on the wire; 0 for a crop that stands by itself and has no string.</summary>
    [
        Quantity(Dimension.Mass, "0 lb", "200 lb"),
        Says("One plant with its fruit as it hangs on the wire; 0 for a crop that stands by itself.")
    ]
    public required double PlantMass { get; init; }

    /// <summary>[Pa] Load of the hanging crop per floor area; 0 where nothing hangs.</summary>
    [Quantity(Dimension.Pressure, "0 Pa", "5 kPa"), Says("Load of the hanging crop for each area of floor.")]
    public required double AreaLoad { get; init; }

    /// <summary>[m³/s] Water one plant takes in a hot week.</summary>
    [Quantity(Dimension.Flow, "0 L/day", "30 L/day"), Says("What one plant drinks in a hot week.")]
    public required double UsePerPlant { get; init; }

    /// <summary>Plants that usually share one pot.</summary>
    [Whole(1, 20, 1), Says("Plants that usually share one pot.")]
    public int PlantsPerPot { get; init; } = 1;

    /// <summary>[mol/(m²·d)] Light (400 to 700 nm) that a full crop wants in a day; null where it is not known.</summary>
    [
        Number(0, 100),
        FoundByPlan("not known"),
        Says("Light that a full crop wants each day, in mol per square metre (the daily light integral).")
    ]
    public double? LightMolesPerSquareMetreAndDay { get; init; }

    /// <summary>[mol/m³] Sodium it tolerates round its roots, by the older norm that laboratories keep; null where none is known.</summary>
    [Number(0, 100), FoundByPlan("as the crop \"other\""), Says("Sodium it tolerates in the pots, in mmol/L.")]
    public double? SodiumMillimolesPerLitre { get; init; }

    /// <summary>[mol/m³] Sodium that newer trials found harmless; null where none was found.</summary>
    [Number(0, 100), FoundByPlan("not known"), Says("Sodium that newer trials found harmless, in mmol/L.")]
    public double? NewerSodiumMillimolesPerLitre { get; init; }

    /// <summary>Whose sodium limits these are; empty where there are none.</summary>
    [Text(300), Says("Whose sodium limits these are.")]
    public string SodiumSource { get; init; } = "";

    /// <summary>What the newer sodium limit costs; empty where there is none.</summary>
    [Text(300), Says("What the newer sodium limit costs.")]
    public string SodiumWarning { get; init; } = "";

    /// <summary>Key of the target whose proportions the plants take up in a loop; null where the stage's own target must do.</summary>
    [
        PartKey(PartGroup.Targets),
        FoundByPlan("the target of the stage"),
        Says("Key of the target that tells what the plants take up in a closed loop.")
    ]
    public string? LoopTarget { get; init; }

    /// <summary>True where it is trained up a string and hangs on the wire.</summary>
    public bool Hangs => PlantMass > 0;

    /// <summary>[m] Usual distance from pot to pot.</summary>
    /// <param name="units">Units in which the grower measures.</param>
    public double SpacingIn(UnitSystem units) => units is UnitSystem.Us ? Spacing : MetricSpacing ?? Spacing;

    /// <summary>True where a grower's word means this crop: its key, its name or one of its words, in any case.</summary>
    /// <param name="word">The word.</param>
    public bool IsCalled(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        var plain = Plain(word);
        return plain.Length > 0 && Words.Append(Key).Append(Name).Any(known => Plain(known) == plain);
    }

    // "Sweet-pepper", "sweet  pepper" and "SWEET PEPPER" are one word.
    private static string Plain(string word) =>
        string.Join(' ', word.ToUpperInvariant().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries));
}
