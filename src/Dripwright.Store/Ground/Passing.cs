namespace Dripwright.Store.Ground;

/// <summary>A folder of passing use beside a file: gone when let go of, and cleared at the next start where a program was killed.</summary>
/// <remarks>
/// It lies in the same folder, so that moving a file out of it is one step of the file system. A file in it is held open for as
/// long as the folder is in use: the system lets go of that whichever way the program ends, so what is left over can be told from
/// what another program is using just now.
/// </remarks>
public sealed class Passing : IDisposable
{
    private const string LockName = "lock";

    // A folder without its lock is just being made, or was left in that moment.
    private static readonly TimeSpan s_making = TimeSpan.FromMinutes(1);

    private readonly string _folder;
    private readonly FileStream _lock;

    private Passing(string folder, FileStream held)
    {
        _folder = folder;
        _lock = held;
    }

    /// <summary>Makes a folder beside a file.</summary>
    /// <param name="path">The file; it need not be there, its folder must.</param>
    /// <exception cref="IOException">It cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static Passing Beside(string path)
    {
        path = Path.GetFullPath(path);
        var beside = Path.GetDirectoryName(path)!;
        if (!Directory.Exists(beside))
        {
            throw new DirectoryNotFoundException($"{beside}: there is no such folder.");
        }

        var folder = Path.Combine(beside, $"{Start(path)}{Guid.NewGuid():N}");
        Directory.CreateDirectory(folder);
        return new Passing(folder, Hold(folder, FileMode.CreateNew));
    }

    /// <summary>Clears what killed programs left beside a file. What is in use stays, and so does what cannot be cleared.</summary>
    /// <param name="path">The file.</param>
    public static void Sweep(string path)
    {
        path = Path.GetFullPath(path);
        var beside = Path.GetDirectoryName(path)!;
        if (!Directory.Exists(beside))
        {
            return;
        }

        foreach (var folder in Left(beside, Start(path)))
        {
            try
            {
                Clear(folder);
            }
            catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
            {
                // In use by another program, or another user's.
            }
        }
    }

    /// <summary>Path of a file in it.</summary>
    /// <param name="name">Its name; not <c>lock</c>.</param>
    public string At(string name) => Path.Combine(_folder, name);

    /// <summary>Clears it with all that is in it.</summary>
    public void Dispose()
    {
        try
        {
            Directory.Delete(_folder, recursive: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            // On Windows the held file cannot go before it is let go of; whatever else is left goes at the next start.
        }

        _lock.Dispose();
        try
        {
            if (Directory.Exists(_folder))
            {
                Directory.Delete(_folder, recursive: true);
            }
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            // The next start clears it.
        }
    }

    private static string Start(string path) => $".{Path.GetFileName(path)}.passing-";

    private static List<string> Left(string beside, string start)
    {
        try
        {
            return
            [
                .. Directory
                    .EnumerateDirectories(beside)
                    .Where(folder =>
                        Path.GetFileName(folder) is { } name
                        && name.StartsWith(start, StringComparison.Ordinal)
                        && Guid.TryParseExact(name[start.Length..], "N", out _)
                    ),
            ];
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static void Clear(string folder)
    {
        if (!File.Exists(Path.Combine(folder, LockName)))
        {
            if (DateTime.UtcNow - Directory.GetLastWriteTimeUtc(folder) > s_making)
            {
                Directory.Delete(folder, recursive: true);
            }

            return;
        }

        using (Hold(folder, FileMode.Open))
        {
            foreach (var file in Directory.EnumerateFiles(folder).Where(file => Path.GetFileName(file) != LockName))
            {
                File.Delete(file);
            }
        }

        Directory.Delete(folder, recursive: true);
    }

    private static FileStream Hold(string folder, FileMode mode) =>
        new(Path.Combine(folder, LockName), mode, FileAccess.ReadWrite, FileShare.None);

    /// <summary>The folder.</summary>
    public override string ToString() => _folder;
}
