using System.Runtime.InteropServices;

namespace Dripwright.Engine.Water;

/// <summary>One emitter as the scatter draws see it.</summary>
/// <param name="Flow">[m³/s] Flow as solved, with an emitter exactly as the maker means it; 0 or more.</param>
/// <param name="Pot">Number of the pot it waters, 0 to count of pots less 1.</param>
/// <param name="Exponent">[-] Exponent x of the emitter law q = k h^x, 0 to 1.</param>
/// <param name="CoefficientOfVariation">[-] Maker's coefficient of variation, 0 to 0.25.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ScatterEmitter(double Flow, int Pot, double Exponent, double CoefficientOfVariation);

/// <summary>Partial clogging: some emitters, taken by chance, have part of their passage left.</summary>
/// <param name="Fraction">[-] Chance that an emitter is partly clogged, 0 to 1.</param>
/// <param name="LeastArea">[-] Least part of the passage's area left open, 0 to 1.</param>
/// <param name="MostArea">[-] Greatest part left open, at least the least, at most 1. Between the two all are equally likely.</param>
public sealed record Clogging(double Fraction, double LeastArea, double MostArea)
{
    /// <summary>All emitters clean.</summary>
    public static Clogging None { get; } = new(0, 1, 1);
}

/// <summary>Flows of all emitters when each is multiplied by its factor, pressures solved anew.</summary>
/// <remarks>Called from several threads at once; must depend on nothing but the factors.</remarks>
/// <param name="factors">[-] Factor of each emitter's k, in the order of the emitters.</param>
/// <param name="flows">[m³/s] To be filled with the flow of each emitter.</param>
public delegate void EmitterFlowSolver(ReadOnlySpan<double> factors, Span<double> flows);

/// <summary>What a scatter run takes: the emitters, how they vary, how many draws.</summary>
public sealed record ScatterModel
{
    /// <summary>Every emitter. Each pot from 0 to the greatest number needs at least one.</summary>
    public required IReadOnlyList<ScatterEmitter> Emitters { get; init; }

    /// <summary>How emitters clog. Default: not at all.</summary>
    public Clogging Clogging { get; init; } = Clogging.None;

    /// <summary>How many times a whole rig is drawn, 1 to 10,000,000.</summary>
    public int Draws { get; init; } = 10_000;

    /// <summary>Where the random numbers start: same seed, same result.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>[-] A pot counts as short of water under this part of the mean, 0 to 1.</summary>
    public double WeakLimit { get; init; } = 0.8;

    /// <summary>Solves pressures anew for each draw. Default none: pressures stay as they were solved.</summary>
    public EmitterFlowSolver? Resolve { get; init; }

    /// <summary>Most threads to use; -1 for all cores. The result does not depend on it.</summary>
    public int Threads { get; init; } = -1;
}
