using System.Text.Json;
using Dripwright.Store.Backups;
using Dripwright.Store.Ground;

namespace Dripwright.Store.Keeping;

/// <summary>What is known of the backups in a folder, kept in the folder.</summary>
internal sealed class BackupList(string folder)
{
    private const string Name = "backups.json";

    // Entries of backups that failed have no file; the newest of them tell enough.
    private const int MostFailed = 20;

    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    private string FilePath => Path.Combine(folder, Name);

    /// <summary>All entries, the newest first; none where there is no list, or none that can be read.</summary>
    public IReadOnlyList<BackupEntry> Read()
    {
        try
        {
            return File.Exists(FilePath)
                ?
                [
                    .. (JsonSerializer.Deserialize<List<BackupEntry>>(File.ReadAllText(FilePath), s_options) ?? [])
                        .Where(entry => entry is { Name: not null } && Path.GetFileName(entry.Name) == entry.Name)
                        .OrderByDescending(entry => entry.MadeAt),
                ]
                : [];
        }
        catch (Exception wrong) when (wrong is JsonException or IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Adds an entry, and takes out what the rule forgets.</summary>
    /// <param name="entry">The new one.</param>
    /// <param name="forget">Deletes the files of one that goes; false where it could not, so that it stays in the list.</param>
    public void Add(BackupEntry entry, Func<BackupEntry, bool> forget)
    {
        List<BackupEntry> all = [entry, .. Read()];
        var good = all.Where(one => one.IsGood).ToList();
        // The second place was perhaps not there each time: it has a rule of its own.
        var kept = BackupRule
            .Kept(good.Select(one => one.MadeAt))
            .Concat(BackupRule.Kept(good.Where(one => one.IsAtSecond).Select(one => one.MadeAt)))
            .ToHashSet();
        var failed = all.Where(one => !one.IsGood).OrderByDescending(one => one.MadeAt).Take(MostFailed).ToHashSet();
        Write([.. all.Where(one => one.IsGood ? kept.Contains(one.MadeAt) || !forget(one) : failed.Contains(one))]);
    }

    private void Write(List<BackupEntry> all)
    {
        try
        {
            Directory.CreateDirectory(folder);
            Passing.Sweep(FilePath);
            using var passing = Passing.Beside(FilePath);
            var draft = passing.At("list");
            File.WriteAllText(draft, JsonSerializer.Serialize(all, s_options));
            SqliteCopy.OnDisk(draft);
            File.Move(draft, FilePath, overwrite: true);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            // The backup is there all the same; the page tells of the last one that could be noted.
            throw Troubles.NotWritable(FilePath, wrong, Troubles.TheBackup);
        }
    }
}
