using Microsoft.EntityFrameworkCore;

namespace Dripwright.Store;

/// <summary>How much of the disk a garden takes.</summary>
/// <param name="Garden">[bytes] The garden itself, with what its database keeps beside it while it is in use.</param>
/// <param name="Beside">[bytes] Older gardens kept beside it: those that a backup or a new version of the tables replaced.</param>
/// <param name="Free">[bytes] What is free on its disk; null for a garden on a server.</param>
public sealed record DiskUse(long Garden, long Beside, long? Free);

public sealed partial class Garden
{
    /// <summary>How much of the disk the garden takes.</summary>
    /// <param name="stop">Asks to stop.</param>
    public async Task<DiskUse> DiskUseAsync(CancellationToken stop = default)
    {
        if (Place.Path is not { } path)
        {
            var size = await _at.Read(tables =>
                    tables
                        .Database.SqlQueryRaw<long>("SELECT pg_database_size(current_database()) AS \"Value\"")
                        .SingleAsync(stop)
                )
                .ConfigureAwait(false);
            return new DiskUse(size, 0, null);
        }

        var name = Path.GetFileName(path);
        var (own, beside) = (0L, 0L);
        foreach (var file in new DirectoryInfo(Path.GetDirectoryName(path)!).EnumerateFiles())
        {
            if (file.Name == name || file.Name == name + "-wal" || file.Name == name + "-shm")
            {
                own += file.Length;
            }
            else if (IsOlder(file.Name, name))
            {
                beside += file.Length;
            }
        }

        return new DiskUse(own, beside, FreeAt(path));
    }

    // ".replaced-<date>" by a backup, ".<version of the tables>" by a newer program.
    private static bool IsOlder(string file, string name) =>
        file.StartsWith(name + ".", StringComparison.Ordinal)
        && (
            file.AsSpan(name.Length).StartsWith(".replaced-", StringComparison.Ordinal)
            || (
                file.Length > name.Length + 16 && file.AsSpan(name.Length + 1, 14).IndexOfAnyExceptInRange('0', '9') < 0
            )
        );

    private static long? FreeAt(string path)
    {
        try
        {
            return new DriveInfo(Path.GetDirectoryName(path)!).AvailableFreeSpace;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }
}
