using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Wires;

/// <summary>One crop wire under its crop.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="Loaded">What it does with every pot's vines fully grown.</param>
/// <param name="Weight">[N] What hangs on it, without its own weight.</param>
/// <param name="Basis">Whose figure the load of most of its plants follows.</param>
public sealed record LoadedWire(WirePlace Place, SpannedWirePlan Loaded, double Weight, CropLoadBasis Basis);

/// <summary>Everything computed of what hangs over the rows.</summary>
/// <remarks>Method page: docs/methods/crop-wire.md</remarks>
/// <param name="Wires">The wires; none where nothing hangs.</param>
/// <param name="Plant">What one plant of the heaviest crop is counted with; null where nothing hangs.</param>
/// <param name="String">What the strings of a vine carry; null where nothing hangs.</param>
/// <param name="HookAllowed">[N] Pull along its axis that a hook may take; null where the timber standard does not know its ground.</param>
public sealed record CropWirePlan(
    IReadOnlyList<LoadedWire> Wires,
    PlantLoad? Plant,
    VineStrings? String,
    double? HookAllowed
);
