namespace Dripwright.Store.Ground;

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

    /// <summary>Another program is changing its tables.</summary>
    Locked,

    /// <summary>Another program kept it busy for too long.</summary>
    Busy,

    /// <summary>The server cannot be reached or refuses.</summary>
    NoServer,

    /// <summary>The connection to the server broke while it was in use.</summary>
    ConnectionLost,

    /// <summary>What was given is not accepted: too long, or faulty.</summary>
    Refused,

    /// <summary>Whoever asks may not do that.</summary>
    NotAllowed,
}

/// <summary>A garden cannot do what was asked, and it is not the program's mistake. The message is for the grower.</summary>
public sealed class GardenException : Exception
{
    /// <summary>A trouble.</summary>
    /// <param name="kind">What kind of trouble.</param>
    /// <param name="message">One clear sentence, and what to do. It may name a file of this machine.</param>
    /// <param name="inner">What it came from.</param>
    /// <param name="forPage">The same without any path of this machine; the message where null.</param>
    public GardenException(TroubleKind kind, string message, Exception? inner = null, string? forPage = null)
        : base(message, inner)
    {
        Kind = kind;
        ForPage = forPage ?? message;
    }

    /// <summary>What kind of trouble.</summary>
    public TroubleKind Kind { get; }

    /// <summary>The message as a page or another program may show it: it names no path of this machine.</summary>
    public string ForPage { get; }

    /// <summary>Whether it may go by itself, so that it is worth asking again.</summary>
    public bool MayPass =>
        Kind
            is TroubleKind.Busy
                or TroubleKind.Locked
                or TroubleKind.NoServer
                or TroubleKind.ConnectionLost
                or TroubleKind.NotWritable;
}
