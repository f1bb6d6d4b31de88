using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>All generic parts that a rig can name, ours with the user's own laid over them.</summary>
public sealed record PartsCatalogue : IKeys
{
    /// <summary>The currency of our own typical prices, and of the user's where none is named.</summary>
    public const string Dollar = "USD";

    private static readonly Lazy<PartsCatalogue> s_default = new(CatalogueData.Load);

    /// <summary>Our own generic parts, read once from the rows built into the engine.</summary>
    public static PartsCatalogue Default => s_default.Value;

    /// <summary>Pipes and hoses by key.</summary>
    public required IReadOnlyDictionary<string, PipeSize> Pipes { get; init; }

    /// <summary>Fittings by key.</summary>
    public required IReadOnlyDictionary<string, FittingType> Fittings { get; init; }

    /// <summary>Stand tubes by key.</summary>
    public required IReadOnlyDictionary<string, TubeSize> Tubes { get; init; }

    /// <summary>Pots by key.</summary>
    public required IReadOnlyDictionary<string, PotType> Pots { get; init; }

    /// <summary>Reservoirs by key.</summary>
    public required IReadOnlyDictionary<string, TankType> Tanks { get; init; }

    /// <summary>Emitters by key.</summary>
    public required IReadOnlyDictionary<string, EmitterType> Emitters { get; init; }

    /// <summary>Strainers by key.</summary>
    public required IReadOnlyDictionary<string, StrainerType> Strainers { get; init; }

    /// <summary>Pumps by key.</summary>
    public required IReadOnlyDictionary<string, PumpModel> Pumps { get; init; }

    /// <summary>Pot outlets by key.</summary>
    public required IReadOnlyDictionary<string, DrainOutletType> Outlets { get; init; }

    /// <summary>Crop wires by key.</summary>
    public required IReadOnlyDictionary<string, WireType> Wires { get; init; }

    /// <summary>Everything else by key.</summary>
    public required IReadOnlyDictionary<string, Sundry> Sundries { get; init; }

    /// <summary>Crops by key.</summary>
    public required IReadOnlyDictionary<string, CropType> Crops { get; init; }

    /// <summary>What pots are filled with, by key.</summary>
    public required IReadOnlyDictionary<string, MediumType> Media { get; init; }

    /// <summary>Three capital letters: the currency of every price the user gives.</summary>
    /// <remarks>Our own typical prices are in US dollars, and count only where this is the US dollar too.</remarks>
    public string Currency { get; init; } = Dollar;

    /// <summary>Fertilisers, acids and bases of a feed.</summary>
    public required SaltCatalogue Salts { get; init; }

    /// <summary>What crops are fed at their stages.</summary>
    public required TargetCatalogue Targets { get; init; }

    /// <summary>Every part, group by group, each in the order of its rows.</summary>
    public IEnumerable<CatalogueEntry> All =>
        [
            .. Pipes.Values,
            .. Fittings.Values,
            .. Tubes.Values,
            .. Pots.Values,
            .. Tanks.Values,
            .. Emitters.Values,
            .. Strainers.Values,
            .. Pumps.Values,
            .. Outlets.Values,
            .. Wires.Values,
            .. Sundries.Values,
        ];

    /// <summary>The fitting of a kind for a pipe, or null when the catalogue has none.</summary>
    /// <param name="pipe">Pipe or hose; its family and nominal size count, not its measures.</param>
    /// <param name="kind">What the fitting is to do.</param>
    public FittingType? FittingFor(PipeSize pipe, FittingKind kind)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        // The last one wins, because the user's own rows stand after ours.
        FittingType? found = null;
        foreach (var fitting in Fittings.Values)
        {
            if (fitting.Kind == kind && fitting.Family == pipe.Family && fitting.Nominal == pipe.Nominal)
            {
                found = fitting;
            }
        }
        return found;
    }

    /// <summary>The hose clamp for a hose, or null for a rigid pipe or when the catalogue has none.</summary>
    /// <param name="hose">Hose; its nominal size counts.</param>
    public Sundry? ClampFor(PipeSize hose)
    {
        ArgumentNullException.ThrowIfNull(hose);
        return hose.Flexible ? Sundries.GetValueOrDefault($"clamp-{hose.Nominal}") : null;
    }

    /// <summary>The sundry part for a use whose diameter is nearest; null when there is none for that use.</summary>
    /// <remarks>Of two equally near the smaller: a hole can be widened. The caller judges whether it is near enough.</remarks>
    /// <param name="use">What it is for.</param>
    /// <param name="diameter">[m] Diameter wanted, in the sense of <see cref="Sundry.Diameter"/>.</param>
    public Sundry? SundryFor(SundryUse use, double diameter)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(diameter);
        return Sundries
            .Values.Where(sundry => sundry.Use == use)
            .OrderBy(sundry => Math.Abs(sundry.Diameter - diameter))
            .ThenBy(sundry => sundry.Diameter)
            .FirstOrDefault();
    }

    /// <summary>The crop that a grower's word means, or null when the catalogue knows none by it.</summary>
    /// <remarks>Of two rows with the same word the last one counts, because the user's own rows stand after ours.</remarks>
    /// <param name="word">As the grower writes it: key, name or any other word of the crop.</param>
    public CropType? CropFor(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return Crops.GetValueOrDefault(word) ?? Crops.Values.LastOrDefault(crop => crop.IsCalled(word));
    }

    /// <summary>The crop that a grower's word means; the row for all other crops where there is none, or null when that lacks too.</summary>
    /// <param name="word">As the grower writes it; may be empty.</param>
    public CropType? CropOrOther(string word) => CropFor(word) ?? Crops.GetValueOrDefault(CropType.Other);

    /// <summary>The part with this key, whatever its group, or null; crops, salts and targets are no parts.</summary>
    /// <param name="key">Key as a rig file writes it.</param>
    public CatalogueEntry? TryFind(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        foreach (var entry in All)
        {
            if (entry.Key == key)
            {
                return entry;
            }
        }

        return null;
    }

    bool IKeys.Has(KeyAttribute field, string key) => GroupKeys.Has(this, GroupOf(field), key);

    IEnumerable<string> IKeys.Of(KeyAttribute field) => GroupKeys.Keys(this, GroupOf(field));

    private static PartGroup GroupOf(KeyAttribute field) => ((PartKeyAttribute)field).PartGroup;
}
