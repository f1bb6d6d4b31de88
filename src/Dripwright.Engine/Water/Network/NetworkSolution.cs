namespace Dripwright.Engine.Water;

/// <summary>What a network does: heads, flows, and how well the equations are met.</summary>
/// <remarks>A snapshot; later solves do not change it. Units are in the members' comments.</remarks>
public sealed record NetworkSolution
{
    /// <summary>True when mass and energy are met within the solver's bounds.</summary>
    public required bool Converged { get; init; }

    /// <summary>Why it did not converge, or why nothing flows; empty otherwise.</summary>
    public required string Reason { get; init; }

    /// <summary>Newton steps taken, over all settings of the check valves.</summary>
    public required int Iterations { get; init; }

    /// <summary>[m] Head of each node over the datum. In a part that no source feeds: the level to which it would drain.</summary>
    public required IReadOnlyList<double> Heads { get; init; }

    /// <summary>[m³/s] Flow of each link from its start to its end.</summary>
    public required IReadOnlyList<double> LinkFlows { get; init; }

    /// <summary>[m³/s] Flow of a single emitter of each entry.</summary>
    public required IReadOnlyList<double> EmitterFlows { get; init; }

    /// <summary>[m] Head at the inlet of each emitter over its outlet, behind its microtube if it has one.</summary>
    public required IReadOnlyList<double> EmitterHeads { get; init; }

    /// <summary>[m³/s] All that leaves through emitters and draws.</summary>
    public required double TotalFlow { get; init; }

    /// <summary>[-] Largest imbalance of flow at a node over the largest flow in a link (10⁻¹² m³/s at least).</summary>
    public required double MassResidual { get; init; }

    /// <summary>[m] Largest difference between the head a link takes and the heads at its ends.</summary>
    public required double EnergyResidual { get; init; }

    /// <summary>Node with the largest imbalance of flow.</summary>
    public required int WorstNode { get; init; }

    /// <summary>Link with the largest energy residual; -1 if there is none.</summary>
    public required int WorstLink { get; init; }

    /// <summary>Nodes that no open link joins to a source.</summary>
    public required IReadOnlyList<int> IsolatedNodes { get; init; }

    /// <summary>Links whose check valve the water holds shut.</summary>
    public required IReadOnlyList<int> ShutCheckValves { get; init; }

    /// <summary>Running pumps driven past the end of their curve or backward.</summary>
    public required IReadOnlyList<int> PumpsOutsideCurve { get; init; }
}
