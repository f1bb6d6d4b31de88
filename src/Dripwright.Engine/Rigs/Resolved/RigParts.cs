using System.Collections.Frozen;
using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Rigs;

/// <summary>Every part that a rig names, by what it does there.</summary>
public sealed record RigParts
{
    /// <summary>The catalogue they come from, for what is chosen by size: coils, clamps, tools, thicker tube.</summary>
    public required PartsCatalogue Catalogue { get; init; }

    /// <summary>Feed line along the rows.</summary>
    public required PipeSize Line { get; init; }

    /// <summary>Header.</summary>
    public required PipeSize Header { get; init; }

    /// <summary>Drain pipe.</summary>
    public required PipeSize Drain { get; init; }

    /// <summary>Stand tube.</summary>
    public required TubeSize Tube { get; init; }

    /// <summary>Crop wire; null where nothing hangs.</summary>
    public required WireType? Wire { get; init; }

    /// <summary>Emitter.</summary>
    public required EmitterType Emitter { get; init; }

    /// <summary>Pot outlet.</summary>
    public required DrainOutletType Outlet { get; init; }

    /// <summary>Strainer; null where there is none.</summary>
    public required StrainerType? Strainer { get; init; }

    /// <summary>Reservoir.</summary>
    public required ResolvedTank Tank { get; init; }

    /// <summary>Pump; null for gravity feed.</summary>
    public required ResolvedPump? Pump { get; init; }

    /// <summary>The fittings of its pipes, by family, nominal size and kind.</summary>
    internal FrozenDictionary<(PipeFamily, string, FittingKind), FittingType> Fittings { get; init; } =
        FrozenDictionary<(PipeFamily, string, FittingKind), FittingType>.Empty;

    /// <summary>The fitting of a kind for a pipe of the rig.</summary>
    /// <param name="pipe">Line, header or drain.</param>
    /// <param name="kind">What it must do.</param>
    /// <exception cref="InvalidOperationException">The rig was not found to need such a fitting: a bug.</exception>
    public FittingType Fitting(PipeSize pipe, FittingKind kind)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        return Fittings.GetValueOrDefault((pipe.Family, pipe.Nominal, kind))
            ?? throw new InvalidOperationException($"{kind} for {pipe.Key} was not resolved with the rig.");
    }

    /// <summary>Key of the clamp for a hose, whether the catalogue has it or not.</summary>
    /// <param name="hose">A hose of the rig.</param>
    public string ClampKey(PipeSize hose)
    {
        ArgumentNullException.ThrowIfNull(hose);
        return Catalogue.ClampFor(hose)?.Key ?? $"clamp-{hose.Nominal}";
    }
}
