using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;

namespace Dripwright.Engine.Rigs;

/// <summary>A salt or acid that the recipe may use.</summary>
/// <param name="Salt">The salt, with the grower's price where one is given.</param>
/// <param name="Have">[kg] How much there is; null where it is not limited and has to be bought.</param>
public sealed record SaltInUse(Salt Salt, double? Have);

/// <summary>What the nutrients section means: crop, target, salts and acid as rows of the catalogue.</summary>
public sealed record ResolvedNutrients
{
    /// <summary>Salts taken where the rig names none: what growers of fruiting vegetables commonly keep.</summary>
    public static IReadOnlyList<string> UsualSalts { get; } =
    [
        "calcium-nitrate-15.5",
        "potassium-nitrate",
        "monopotassium-phosphate",
        "potassium-sulfate",
        "magnesium-sulfate-7h2o",
        "fe-dtpa-11",
        "manganese-sulfate-1h2o",
        "zinc-sulfate-7h2o",
        "boric-acid",
        "copper-sulfate-5h2o",
        "sodium-molybdate-2h2o",
    ];

    /// <summary>The crop.</summary>
    public required CropType Crop { get; init; }

    /// <summary>The crop whose sodium limit counts: the crop itself, or "other" where none is known for it.</summary>
    public required CropType SodiumOf { get; init; }

    /// <summary>What the crop is fed at its stage, with the target that is used.</summary>
    public required CropStage Stage { get; init; }

    /// <summary>The target that is used.</summary>
    public required NutrientTarget Target { get; init; }

    /// <summary>What the plants are taken to take up in a loop.</summary>
    public required NutrientTarget LoopTarget { get; init; }

    /// <summary>[-] pH wanted.</summary>
    public required double PH { get; init; }

    /// <summary>Salts, in the order of the file, and the acid last where there is one.</summary>
    public required IReadOnlyList<SaltInUse> Salts { get; init; }

    /// <summary>The acid; null where none is at hand.</summary>
    public required Salt? Acid { get; init; }
}
