using System.Net;

namespace Dripwright.Workbench.Setup;

/// <summary>How the workbench is opened.</summary>
public sealed record WorkbenchOptions
{
    /// <summary>Port of a workbench that is not told another.</summary>
    public const int UsualPort = 5117;

    /// <summary>Address to listen at. Only this machine's own (loopback) addresses, unless it opens to the network.</summary>
    public string Address { get; init; } = "127.0.0.1";

    /// <summary>Whether it opens to the house network. Then everybody must sign in, also on this machine.</summary>
    public bool Network { get; init; }

    /// <summary>
    /// Whether only the account that opened it may use it, on a machine with several: then a page in a file that only that account can
    /// read lets a browser in.
    /// </summary>
    public bool OnlyMe { get; init; }

    /// <summary>Whether it asks who somebody is.</summary>
    public bool AsksWho => Network || OnlyMe;

    /// <summary>Further names by which the network knows this machine; requests that call it otherwise are refused.</summary>
    public IReadOnlyList<string> KnownAs { get; init; } = [];

    /// <summary>The server's certificate; null where it does not encrypt.</summary>
    public CertificatePlace? Certificate { get; init; }

    /// <summary>Programs before it that encrypt, and whose word on who asks, and how, is believed.</summary>
    public IReadOnlyList<IPNetwork> TrustedProxies { get; init; } = [];

    /// <summary>Port; 0 takes any free one.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Where the garden is kept: a SQLite file, or a connection string of a PostgreSQL server.</summary>
    public required Store.Ground.GardenPlace Garden { get; init; }

    /// <summary>Folder for the log and the keys that protect forms; made when it is not there.</summary>
    public required string DataFolder { get; init; }

    /// <summary>A second folder for the daily backups, such as one on another disk; it must be there. Null for none.</summary>
    public string? CopiesTo { get; init; }

    /// <summary>Address of an OpenTelemetry collector (HTTP) that gets counts and times of the running program; null for off.</summary>
    public Uri? MetricsTo { get; init; }

    /// <summary>How long the page waits after the last letter before it keeps the draft.</summary>
    public TimeSpan KeepAfter { get; init; } = TimeSpan.FromMilliseconds(700);

    /// <summary>Whether a new garden gets the demo rigs.</summary>
    public bool WithDemo { get; init; } = true;

    /// <summary>Name of the assembly whose build collected the pages' scripts and styles.</summary>
    public string HostAssembly { get; init; } = "dripwright";

    /// <summary>Tells the addresses by which the house reaches this machine now.</summary>
    internal Func<IReadOnlyList<IPAddress>> Addresses { get; init; } = PrivateNetwork.OfMachine;

    /// <summary>Clock; the system's where null.</summary>
    public TimeProvider? Time { get; init; }
}
