namespace Dripwright.Terminal;

/// <summary>What the program's exit code says. This is the one place; docs/handbook/command-line.md repeats it.</summary>
internal static class Exit
{
    /// <summary>Done.</summary>
    public const int Good = 0;

    /// <summary>The call was wrong: an unknown option, a missing or a surplus word.</summary>
    public const int WrongCall = 1;

    /// <summary>A rig file, catalogue or garden has faults, is too large, or cannot be read.</summary>
    public const int FaultyFile = 2;

    /// <summary>
    /// <c>suggest</c>: no rig passes every rule. <c>check</c>: the file is sound, but the rig would fail or hurt (a finding of level "stop"). <c>plan</c> and
    /// <c>pack</c> have done their work when they have said so, and give 0.
    /// </summary>
    public const int RigWouldFail = 3;

    /// <summary>Something could not be written, is busy, or stands in the way.</summary>
    public const int NotWritten = 4;

    /// <summary>A mistake in the program itself.</summary>
    public const int Internal = 70;

    /// <summary>Stopped by Ctrl-C or a request to end (128 + 2, as shells count it).</summary>
    public const int Stopped = 130;
}
