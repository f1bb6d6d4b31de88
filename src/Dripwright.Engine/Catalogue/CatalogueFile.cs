using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>What a catalogue file says: rows of parts, salts, targets and crops, by group.</summary>
/// <remarks>
/// Described by the same attributes as the rig file. Groups are read in this order, so what others name stands before them:
/// sundries are pieces of parts, crops name targets, stages name crops and targets.
/// </remarks>
internal sealed record CatalogueFile
{
    /// <summary>The newest version of the format.</summary>
    public const int CurrentFormat = 1;

    /// <summary>Most rows of one group.</summary>
    public const int MostRows = 2000;

    [Whole(CurrentFormat, CurrentFormat, CurrentFormat), Says("Version of the catalogue file's format.")]
    public int Format { get; init; } = CurrentFormat;

    [
        Text(3),
        FoundByPlan("USD"),
        Says(
            "Currency of all your prices, three capital letters such as \"USD\" or \"EUR\". The invented typical prices are in US dollars and count with USD only."
        )
    ]
    public string? Currency { get; init; }

    [Items(0, MostRows), Says("Small parts and tools, and the pieces of which other parts are made.")]
    public IReadOnlyList<Sundry> Sundries { get; init; } = [];

    [Items(0, MostRows), Says("Pipes and hoses.")]
    public IReadOnlyList<PipeSize> Pipes { get; init; } = [];

    [Items(0, MostRows), Says("Fittings, each for one family and nominal size of pipe.")]
    public IReadOnlyList<FittingType> Fittings { get; init; } = [];

    [Items(0, MostRows), Says("Tubes of the stand.")]
    public IReadOnlyList<TubeSize> Tubes { get; init; } = [];

    [Items(0, MostRows), Says("Pots.")]
    public IReadOnlyList<PotType> Pots { get; init; } = [];

    [Items(0, MostRows), Says("Reservoirs.")]
    public IReadOnlyList<TankType> Tanks { get; init; } = [];

    [Items(0, MostRows), Says("Emitters.")]
    public IReadOnlyList<EmitterType> Emitters { get; init; } = [];

    [Items(0, MostRows), Says("Strainers.")]
    public IReadOnlyList<StrainerType> Strainers { get; init; } = [];

    [Items(0, MostRows), Says("Pumps.")]
    public IReadOnlyList<PumpModel> Pumps { get; init; } = [];

    [Items(0, MostRows), Says("Pot outlets.")]
    public IReadOnlyList<DrainOutletType> Outlets { get; init; } = [];

    [Items(0, MostRows), Says("Crop wires.")]
    public IReadOnlyList<WireType> Wires { get; init; } = [];

    [Items(0, MostRows), Says("What pots are filled with.")]
    public IReadOnlyList<MediumType> Media { get; init; } = [];

    [Items(0, MostRows), Says("Salts, acids and bases of a nutrient solution.")]
    public IReadOnlyList<SaltRow> Salts { get; init; } = [];

    [Items(0, MostRows), Says("What nutrient solutions should hold.")]
    public IReadOnlyList<TargetRow> Targets { get; init; } = [];

    [Items(0, MostRows), Says("Crops: how far apart they stand, what they weigh and drink, and what they tolerate.")]
    public IReadOnlyList<CropType> Crops { get; init; } = [];

    [Items(0, MostRows), Says("Which target a crop gets at a stage, and how strong.")]
    public IReadOnlyList<CropStage> Stages { get; init; } = [];
}
