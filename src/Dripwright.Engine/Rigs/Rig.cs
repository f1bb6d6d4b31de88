using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>One reservoir and all the rows it feeds: what a rig file says, in SI, with every default filled in.</summary>
/// <remarks>
/// The attributes on the fields are the one description from which the reader, the writer, the JSON Schema and the
/// handbook's table of fields are made. A property's name in the file is its name here in camel case.
/// </remarks>
public sealed record Rig
{
    /// <summary>The newest version of the rig file's format.</summary>
    public const int CurrentFormat = 1;

    /// <summary>Version of the rig file's format.</summary>
    [Whole(1, CurrentFormat, CurrentFormat), Says("Version of the rig file's format.")]
    public int Format { get; init; } = CurrentFormat;

    /// <summary>What the grower calls the rig.</summary>
    [Text(80, "Unnamed rig"), Says("What you call the rig. It stands in every title block.")]
    public string Name { get; init; } = "Unnamed rig";

    /// <summary>Unit system for display.</summary>
    [Choice("us"), Says("Units the plan is shown in. You may write any unit you like in this file.")]
    public UnitSystem Units { get; init; }

    /// <summary>Free notes.</summary>
    [Text(2000), Says("Anything you want to remember.")]
    public string Notes { get; init; } = "";

    /// <summary>Where the rig stands.</summary>
    [Says("Where the rig stands.")]
    public required Site Site { get; init; }

    /// <summary>The rows, front to back.</summary>
    [Items(1, 100), Says("The rows, from the front of the room to the back.")]
    public required IReadOnlyList<Row> Rows { get; init; }

    /// <summary>The stand under the pots.</summary>
    [Says("The knock-down stand under the pots.")]
    public required Stand Stand { get; init; }

    /// <summary>How the stand's printed parts are printed.</summary>
    [Says("How the stand's printed parts are printed.")]
    public Printing Printing { get; init; } = new();

    /// <summary>The crop wire over the rows.</summary>
    [Says("The crop wire over the rows, on which the vines hang.")]
    public required CropWire CropWire { get; init; }

    /// <summary>From the pump to the emitters.</summary>
    [Says("From the pump to the emitters.")]
    public required Feed Feed { get; init; }

    /// <summary>From the pots back to the reservoir.</summary>
    [Says("From the pots back to the reservoir.")]
    public required Drain Drain { get; init; }

    /// <summary>The reservoir.</summary>
    [Says("The reservoir.")]
    public required Reservoir Reservoir { get; init; }

    /// <summary>The pump.</summary>
    [Says("The pump. Model \"none\" is gravity feed from a raised reservoir.")]
    public required Pump Pump { get; init; }

    /// <summary>When the pump runs.</summary>
    [Says("When the pump runs.")]
    public required Timer Timer { get; init; }

    /// <summary>What the reservoir is filled with.</summary>
    [Formerly("nutrition"), Says("The feed solution: crop, water and salts.")]
    public NutrientMix Nutrients { get; init; } = new();

    /// <summary>Parts the grower has already.</summary>
    [Items(0, 500), Says("Parts you have already: they are used first and not bought.")]
    public IReadOnlyList<OnHand> OnHand { get; init; } = [];

    /// <summary>Spares wanted.</summary>
    [Says("Spares you want to keep.")]
    public required Spares Spares { get; init; }
}
