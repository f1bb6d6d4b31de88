namespace Dripwright.Engine.Curing;

/// <summary>How far cures are looked for.</summary>
public sealed record CureOptions
{
    /// <summary>Cures that are offered for one finding at most.</summary>
    public int Most { get; init; } = 3;

    /// <summary>Trials for one finding at most; each plans the rig anew.</summary>
    public int MostTrials { get; init; } = 60;

    /// <summary>Asks to stop; heard between trials and within them.</summary>
    public CancellationToken Stop { get; init; }
}
