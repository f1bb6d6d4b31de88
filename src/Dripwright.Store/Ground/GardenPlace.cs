using Dripwright.Language;

namespace Dripwright.Store.Ground;

/// <summary>Where a garden is kept: one file, or a database on a server.</summary>
public sealed record GardenPlace
{
    private GardenPlace(string? path, string? connection)
    {
        Path = path;
        Connection = connection;
    }

    /// <summary>Full path of the file; null on a server.</summary>
    public string? Path { get; }

    /// <summary>How to reach the server's database; null for a file. May hold a password: never show it.</summary>
    internal string? Connection { get; }

    /// <summary>A SQLite file. It is made, with its folder, when it is not there.</summary>
    /// <param name="path">Path of the file, by custom with the ending <c>.dripwright</c>.</param>
    /// <exception cref="ArgumentException">The path is empty or no path.</exception>
    public static GardenPlace File(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return new GardenPlace(System.IO.Path.GetFullPath(path), null);
    }

    /// <summary>A database on a PostgreSQL server, for gardens that several people or sites share.</summary>
    /// <param name="connectionString">Host, database, user and so on, as Npgsql reads it. The database is made when it is not there.</param>
    public static GardenPlace Server(string connectionString)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(connectionString);
        return new GardenPlace(null, connectionString);
    }

    /// <summary>A place as people write it: the path of a file, or a connection string, which begins with "Host=".</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="ArgumentException">It is empty or no path.</exception>
    public static GardenPlace Of(string text)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(text);
        return text.TrimStart().StartsWith("Host=", StringComparison.OrdinalIgnoreCase) ? Server(text) : File(text);
    }

    /// <summary>Where a garden is kept when nobody says otherwise: <c>garden.dripwright</c> in the user's data folder.</summary>
    /// <exception cref="GardenException">The user has no such folder.</exception>
    public static GardenPlace Usual()
    {
        var folder = Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData,
            Environment.SpecialFolderOption.DoNotVerify
        );
        return folder.Length > 0
            ? File(System.IO.Path.Combine(folder, "dripwright", "garden.dripwright"))
            : throw new GardenException(TroubleKind.NotThere, Words.Of("store.no-folder"));
    }

    /// <summary>The place in words that may be shown: never with a user or password.</summary>
    public override string ToString() => Path ?? ServerWords.Of(Connection!);
}
