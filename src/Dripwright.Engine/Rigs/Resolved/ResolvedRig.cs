using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>A row of a rig with its pots.</summary>
/// <param name="Index">Index in the rig file's list of rows, from 0.</param>
/// <param name="Spec">What the rig says of it.</param>
/// <param name="Pot">Its kind of pot.</param>
/// <param name="Medium">What its pots are filled with.</param>
/// <param name="Pots">What its pots hold, left to right.</param>
public sealed record ResolvedRow(int Index, Row Spec, PotType Pot, MediumType Medium, IReadOnlyList<PlantedPot> Pots);

/// <summary>What a rig means: every key looked up, every measure settled, once, for all stages of a plan.</summary>
/// <remarks>
/// Made by the reader of rig files as its last step, so that what cannot be resolved is a fault with its line. Whatever two
/// stages need alike (tank, pump, hours a day, crops, prices) stands here and is worked out nowhere else.
/// </remarks>
public sealed record ResolvedRig
{
    private ResolvedRig(Rig rig) => Rig = rig;

    /// <summary>The rig as it is written.</summary>
    public Rig Rig { get; private init; }

    /// <summary>Its parts.</summary>
    public required RigParts Parts { get; init; }

    /// <summary>Its rows, one for each entry of the rig file; an entry may stand for several rows alike.</summary>
    public required IReadOnlyList<ResolvedRow> Rows { get; init; }

    /// <summary>When the pump runs.</summary>
    public required PumpClock Clock { get; init; }

    /// <summary>What the reservoir is filled with; null where no recipe is asked for.</summary>
    public required ResolvedNutrients? Nutrients { get; init; }

    /// <summary>Three capital letters: the currency of every price.</summary>
    public string Currency => Parts.Catalogue.Currency;

    /// <summary>[m³/s] What one plant of a crop drinks: what the rig says, or else what is usual for the crop.</summary>
    /// <param name="crop">The crop.</param>
    public double UsePerPlant(CropType crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return Rig.Reservoir.UsePerPlant ?? crop.UsePerPlant;
    }

    /// <summary>[kg] What one plant of a crop hangs with: what the rig says, or else what is usual for the crop; 0 for one that stands by itself.</summary>
    /// <param name="crop">The crop.</param>
    public double PlantMass(CropType crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return crop.Hangs ? Rig.CropWire.PlantMass ?? crop.PlantMass : 0;
    }

    /// <summary>The same rig for someone who reads other units.</summary>
    /// <param name="units">Units of whoever looks.</param>
    public ResolvedRig In(UnitSystem units) => this with { Rig = Rig with { Units = units } };

    /// <summary>The same rig with more parts on hand.</summary>
    /// <param name="parts">Parts beside those that the rig file names.</param>
    public ResolvedRig WithOnHand(IReadOnlyList<OnHand> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count == 0 ? this : this with { Rig = Rig with { OnHand = [.. Rig.OnHand, .. parts] } };
    }

    /// <summary>The same rig under another name.</summary>
    /// <param name="name">The name.</param>
    public ResolvedRig Named(string name) => this with { Rig = Rig with { Name = name } };

    /// <summary>Resolves a rig for which no file is at hand.</summary>
    /// <param name="rig">A rig whose every field holds what a file may hold.</param>
    /// <param name="catalogue">The catalogue it is made for.</param>
    /// <returns>The rig; null where the catalogue lacks what it needs, or its measures contradict each other.</returns>
    public static ResolvedRig? TryOf(Rig rig, PartsCatalogue catalogue)
    {
        return Resolved(rig, catalogue, []);
    }

    /// <summary>Resolves a rig for which no file is at hand.</summary>
    /// <param name="rig">A rig that was read without a fault.</param>
    /// <param name="catalogue">The catalogue it was read with.</param>
    /// <exception cref="ArgumentException">The rig cannot be resolved with this catalogue; the message says why.</exception>
    public static ResolvedRig Of(Rig rig, PartsCatalogue catalogue)
    {
        var faults = new List<string>();
        return Resolved(rig, catalogue, faults) ?? throw new ArgumentException(string.Join(" ", faults), nameof(rig));
    }

    private static ResolvedRig? Resolved(Rig rig, PartsCatalogue catalogue, List<string> faults)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(catalogue);
        void Say(string path, Phrase found, Phrase expected) =>
            faults.Add($"{path}: found {found}; expected {expected}.");

        RigResolver.CheckKeys(rig, catalogue, Say);
        return faults.Count > 0 ? null : RigResolver.Resolve(rig, catalogue, _ => true, Say);
    }

    internal static ResolvedRig Made(
        Rig rig,
        RigParts parts,
        IReadOnlyList<ResolvedRow> rows,
        ResolvedNutrients? nutrients
    ) =>
        new(rig)
        {
            Parts = parts,
            Rows = rows,
            Clock = PumpClock.Of(rig.Timer),
            Nutrients = nutrients,
        };
}
