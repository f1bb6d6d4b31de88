namespace Dripwright.Terminal;

/// <summary>Where the program reads and writes, so that tests can stand in for the terminal.</summary>
internal sealed record Surroundings
{
    /// <summary>Columns of text that goes into a file or another program.</summary>
    public const int PlainWidth = 80;

    public required Stream InBytes { get; init; }

    public required TextReader In { get; init; }

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    public bool InIsTerminal { get; init; }

    public bool OutIsTerminal { get; init; }

    public bool ErrorIsTerminal { get; init; }

    public int Width { get; init; } = PlainWidth;

    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>Shows an address to the person at this machine; null where there is nobody to show it to.</summary>
    public Action<string>? Browse { get; init; }

    /// <summary>Reads a line of the terminal without showing it; an ordinary line where null.</summary>
    public Func<string?>? ReadUnseen { get; init; }
}
