using Dripwright.Engine.Nutrition.Chemistry;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Nutrition.Strength;

/// <summary>A bottle to bring pH down or up, by what is in it. The acid or base is what its ions leave open.</summary>
public sealed record PhBottle
{
    private static readonly Dictionary<Constituent, int> Charges = new()
    {
        [Constituent.NitrateNitrogen] = -1,
        [Constituent.AmmoniumNitrogen] = 1,
        [Constituent.Phosphorus] = -1,
        [Constituent.Potassium] = 1,
        [Constituent.Calcium] = 2,
        [Constituent.Magnesium] = 2,
        [Constituent.Sulfur] = -2,
        [Constituent.Sodium] = 1,
        [Constituent.Chloride] = -1,
    };

    /// <summary>A bottle of a name and its contents.</summary>
    /// <param name="name">Name in the grower's words, such as "nitric acid 60 %".</param>
    /// <param name="contents">[mol/m³] What one cubic metre of the bottle's liquid holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is negative, or the contents are neither acid nor base.</exception>
    public PhBottle(string name, Composition contents)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(contents);
        double acid = 0;
        foreach (Constituent constituent in Composition.Constituents)
        {
            Guard.NotNegative(contents[constituent], nameof(contents));
            acid -= Charges.GetValueOrDefault(constituent) * contents[constituent];
        }

        if (Math.Abs(acid) < 1)
        {
            throw new ArgumentOutOfRangeException(
                nameof(contents),
                acid,
                "Acids and bases cancel out: this bottle moves no pH."
            );
        }

        Name = name;
        Contents = contents;
        Equivalents = acid;
    }

    /// <summary>Name in the grower's words.</summary>
    public string Name { get; }

    /// <summary>[mol/m³] What one cubic metre of it holds.</summary>
    public Composition Contents { get; }

    /// <summary>[mol/m³ of charge] Acid in it, phosphoric counted once, sulfuric twice; negative for a base.</summary>
    public double Equivalents { get; }

    /// <summary>Whether it brings pH down.</summary>
    public bool IsAcid => Equivalents > 0;

    /// <summary>What to mind when it is used.</summary>
    public IReadOnlyList<string> Cautions =>
        [
            "Wear goggles and gloves.",
            IsAcid
                ? "Pour the acid into the water, slowly and in small amounts; never water into the acid."
                : "Pour the lye into the water, slowly and in small amounts; never water into the lye.",
            "Never bring acid and lye, or acid and chlorine bleach, together.",
            "Keep it locked away from children, from metal and from the nitrate bags.",
        ];
}
