namespace Dripwright.Store;

/// <summary>Why a garden could not be opened, read or changed.</summary>
public enum TroubleKind
{
    /// <summary>There is no such file.</summary>
    NotThere,

    /// <summary>The place cannot be written, or not even read.</summary>
    NotWritable,

    /// <summary>The file is something else, not a garden.</summary>
    NotAGarden,

    /// <summary>The file is damaged.</summary>
    Damaged,

    /// <summary>A newer Dripwright wrote it.</summary>
    Newer,

    /// <summary>A change of its tables was broken off, or goes on in another program.</summary>
    Locked,

    /// <summary>Another program kept it busy for too long.</summary>
    Busy,

    /// <summary>The server cannot be reached or refuses.</summary>
    NoServer,

    /// <summary>What was given is not accepted: too long, or faulty.</summary>
    Refused,
}

/// <summary>A garden cannot do what was asked, and it is not the program's mistake. The message is for the grower.</summary>
public sealed class GardenException : Exception
{
    /// <summary>A trouble.</summary>
    /// <param name="kind">What kind of trouble.</param>
    /// <param name="message">One clear sentence, and what to do.</param>
    /// <param name="inner">What it came from.</param>
    public GardenException(TroubleKind kind, string message, Exception? inner = null)
        : base(message, inner) => Kind = kind;

    /// <summary>What kind of trouble.</summary>
    public TroubleKind Kind { get; }
}
