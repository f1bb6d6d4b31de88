using System.Globalization;
using Dripwright.Language;
using Dripwright.Store.Backups;
using Dripwright.Store.Ground;

namespace Dripwright.Store.Keeping;

/// <summary>The backups of one garden: made once a day or when asked for, each restored on trial, kept by a rule, told.</summary>
/// <remarks>
/// A garden in a file gets backups of its file; one on a server its garden file, which leaves out the steps of undo. Only files
/// that its own list names are ever deleted. One object for each garden and process.
/// </remarks>
public sealed class BackupFolder : IDisposable
{
    /// <summary>Age from which the last good backup is told as old.</summary>
    public static readonly TimeSpan Old = TimeSpan.FromDays(3);

    private static readonly TimeSpan s_daily = TimeSpan.FromDays(1);
    private static readonly TimeSpan s_afterFault = TimeSpan.FromHours(1);

    private readonly Garden _garden;
    private readonly string _folder;
    private readonly string? _second;
    private readonly TimeProvider _time;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly BackupList _list;

    /// <summary>The backups of a garden.</summary>
    /// <param name="garden">The garden.</param>
    /// <param name="folder">Where they are kept; made when the first is.</param>
    /// <param name="second">A second place, such as a folder on another disk, which must be there; null for none.</param>
    /// <param name="time">The clock; the system's where null.</param>
    public BackupFolder(Garden garden, string folder, string? second = null, TimeProvider? time = null)
    {
        ArgumentNullException.ThrowIfNull(garden);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        _garden = garden;
        _folder = Path.GetFullPath(folder);
        _second = second is null ? null : Path.GetFullPath(second);
        _time = time ?? TimeProvider.System;
        _list = new BackupList(_folder);
    }

    private string Ending => _garden.Place.Path is null ? ".garden.json" : ".dripwright";

    private string Stem => _garden.Place.Path is { } path ? Path.GetFileNameWithoutExtension(path) : "garden";

    /// <summary>Where backups of a garden are kept by custom: in a folder beside it.</summary>
    /// <param name="place">The garden.</param>
    /// <param name="otherwise">Folder for the backups of a garden on a server.</param>
    public static string Usual(GardenPlace place, string otherwise)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.Path is { } path
            ? Path.Combine(Path.GetDirectoryName(path)!, Path.GetFileNameWithoutExtension(path) + "-backups")
            : Path.Combine(otherwise, "garden-backups");
    }

    /// <summary>How it stands.</summary>
    public BackupStatus Status()
    {
        var all = _list
            .Read()
            .Select(entry =>
                entry.IsGood && !File.Exists(Path.Combine(_folder, entry.Name))
                    ? entry with
                    {
                        Fault = Words.Of("store.backup.gone"),
                    }
                    : entry
            )
            .ToList();
        var good = all.FirstOrDefault(entry => entry.IsGood);
        var age = good is null ? (TimeSpan?)null : Now - good.MadeAt;
        return new BackupStatus(
            good?.MadeAt,
            age,
            age is not { } known || known > Old,
            all.FirstOrDefault()?.Fault,
            _second is null ? null : all.FirstOrDefault()?.SecondFault,
            _second is not null,
            all
        );
    }

    /// <summary>Makes a backup where one is due: a day after the last, or an hour after one that failed.</summary>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>What was made; null where none is due.</returns>
    public async Task<BackupEntry?> MakeIfDueAsync(CancellationToken stop = default)
    {
        if (_list.Read() is [var last, ..])
        {
            // A second place that is not there is told, and tried again with the next one.
            var wait = last.IsGood ? s_daily : s_afterFault;
            // A last one in the time to come was made while the clock was wrong.
            if (Now - last.MadeAt < wait && last.MadeAt - Now < s_afterFault)
            {
                return null;
            }
        }

        return await MakeAsync(stop).ConfigureAwait(false);
    }

    /// <summary>Makes a backup now, restores it on trial, and forgets the old ones by the rule.</summary>
    /// <param name="stop">Asks to stop.</param>
    /// <returns>What was made; where that failed its <see cref="BackupEntry.Fault"/> says why.</returns>
    public async Task<BackupEntry> MakeAsync(CancellationToken stop = default)
    {
        await _turn.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            var entry = await Make(stop).ConfigureAwait(false);
            _list.Add(entry, DeleteForgotten);
            return entry;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Path of a backup of the list; null where there is none of that name.</summary>
    /// <param name="name">Its name in the list.</param>
    public string? PathOf(string name) =>
        _list.Read().Any(entry => entry.Name == name) && File.Exists(Path.Combine(_folder, name))
            ? Path.Combine(_folder, name)
            : null;

    /// <summary>[bytes] What the backups take on the garden's own disk.</summary>
    public long Bytes() =>
        Directory.Exists(_folder) ? new DirectoryInfo(_folder).EnumerateFiles().Sum(file => file.Length) : 0;

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private DateTime Now => Opening.Now(_time);

    private async Task<BackupEntry> Make(CancellationToken stop)
    {
        var now = Now;
        var name = FreeName(now);
        var path = Path.Combine(_folder, name);
        try
        {
            Directory.CreateDirectory(_folder);
            await Write(path, stop).ConfigureAwait(false);
            await Try(path, stop).ConfigureAwait(false);
        }
        catch (Exception wrong) when (wrong is GardenException or IOException or UnauthorizedAccessException)
        {
            // One that does not restore is worse than none: it would be trusted.
            Delete(path);
            return new BackupEntry(name, now, 0, Why(wrong), null, false);
        }

        var second = _second is null
            ? null
            : await Second(path, Path.Combine(_second, name), stop).ConfigureAwait(false);
        return new BackupEntry(
            name,
            now,
            new FileInfo(path).Length,
            null,
            second,
            _second is not null && second is null
        );
    }

    // A folder that is not there is not made: where a disk is not plugged in it would fill the wrong one.
    private async Task<string?> Second(string path, string to, CancellationToken stop)
    {
        if (!Directory.Exists(_second))
        {
            return Words.Of("store.backup.second");
        }

        try
        {
            Passing.Sweep(to);
            using (var passing = Passing.Beside(to))
            {
                var draft = passing.At("backup");
                File.Copy(path, draft);
                SqliteCopy.OnDisk(draft);
                File.Move(draft, to, overwrite: false);
            }

            await Try(to, stop).ConfigureAwait(false);
            return null;
        }
        catch (Exception wrong) when (wrong is GardenException or IOException or UnauthorizedAccessException)
        {
            return Why(wrong);
        }
    }

    private async Task Write(string path, CancellationToken stop)
    {
        if (_garden.Place.Path is not null)
        {
            await _garden.BackupAsync(path, stop: stop).ConfigureAwait(false);
            return;
        }

        Passing.Sweep(path);
        using var passing = Passing.Beside(path);
        var draft = passing.At("backup");
        var to = new FileStream(draft, FileMode.CreateNew, FileAccess.Write);
        await using (to.ConfigureAwait(false))
        {
            await _garden.ExportAsync(to, stop).ConfigureAwait(false);
            to.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: false);
    }

    // As it would be done in need, but into a passing file in the first place, where there is room.
    private Task Try(string path, CancellationToken stop) =>
        _garden.Place.Path is null
            ? GardenFile.Try(path, Path.Combine(_folder, "trial"), stop)
            : Task.Run(() => Restoring.Try(path, Path.Combine(_folder, "trial"), stop), stop);

    private string FreeName(DateTime now)
    {
        var stamp = now.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        for (var n = 1; ; n++)
        {
            var name =
                n == 1
                    ? $"{Stem}-{stamp}{Ending}"
                    : string.Create(CultureInfo.InvariantCulture, $"{Stem}-{stamp}-{n}{Ending}");
            if (
                !File.Exists(Path.Combine(_folder, name))
                && (_second is null || !File.Exists(Path.Combine(_second, name)))
            )
            {
                return name;
            }
        }
    }

    private bool DeleteForgotten(BackupEntry entry)
    {
        if (entry.IsAtSecond && _second is not null)
        {
            if (!Directory.Exists(_second) || !Delete(Path.Combine(_second, entry.Name)))
            {
                return false;
            }
        }

        return Delete(Path.Combine(_folder, entry.Name));
    }

    private static bool Delete(string path)
    {
        try
        {
            File.Delete(path);
            return true;
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string Why(Exception wrong) =>
        wrong is GardenException trouble ? trouble.ForPage : Words.Of("store.backup.unwritten");
}
