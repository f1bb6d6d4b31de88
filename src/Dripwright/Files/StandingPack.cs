using System.Security.Cryptography;
using Dripwright.Language;
using Dripwright.Pack;

namespace Dripwright.Files;

/// <summary>What a folder holds, held against the list of the pack that it may be.</summary>
/// <param name="List">The pack's own list; null where there is none that can be trusted.</param>
/// <param name="Fault">What is wrong with the list; null where there is none at all, or where it is sound.</param>
/// <param name="Foreign">
/// What is not of the pack, or not as its list says; names with "/" between their parts, a folder with "/" at its end. Without a
/// list everything is foreign.
/// </param>
/// <param name="Sound">How many files are as the list says, the list not counted.</param>
internal sealed record StandingPack(PackList? List, string? Fault, IReadOnlyList<string> Foreign, int Sound)
{
    /// <summary>Whether every file of the list is there, unchanged, and nothing else.</summary>
    public bool IsWhole => List is not null && Foreign.Count == 0 && Sound == List.Files.Count;

    /// <summary>Looks through a folder. Links are never followed.</summary>
    public static StandingPack Look(string folder, CancellationToken stop = default)
    {
        var (list, fault) = ListOf(folder);
        List<string> foreign = [];
        var sound = 0;
        if (list is null)
        {
            foreign.AddRange(new DirectoryInfo(folder).EnumerateFileSystemInfos().Select(entry => Shown(entry, "")));
        }
        else
        {
            var files = list.Files.ToDictionary(file => file.Name, StringComparer.Ordinal);
            Walk(new DirectoryInfo(folder), "");

            void Walk(DirectoryInfo at, string within)
            {
                foreach (var entry in at.EnumerateFileSystemInfos())
                {
                    stop.ThrowIfCancellationRequested();
                    var name = within + entry.Name;
                    if (IsFolder(entry) && list.Folders.Contains(name))
                    {
                        Walk((DirectoryInfo)entry, name + "/");
                    }
                    else if (entry is FileInfo file && files.TryGetValue(name, out var listed) && IsAs(file, listed))
                    {
                        sound++;
                    }
                    else if (name != PackList.FileName)
                    {
                        foreign.Add(
                            Shown(entry, within)
                                + (files.ContainsKey(name) ? " " + Words.Of("program.pack.changed") : "")
                        );
                    }
                }
            }
        }

        foreign.Sort(StringComparer.Ordinal);
        return new StandingPack(list, fault, foreign, sound);
    }

    /// <summary>The list that lies in a folder: null with a fault where it cannot be trusted, null without one where there is none.</summary>
    public static (PackList? List, string? Fault) ListOf(string folder)
    {
        var file = new FileInfo(Path.Combine(folder, PackList.FileName));
        if (file.LinkTarget is not null)
        {
            return (null, Words.Of("program.pack.is-link"));
        }

        // A pipe or a device says 0; it would be waited for without end.
        return !file.Exists ? (null, null)
            : file.Length is 0 or > PackList.MostBytes ? (null, Words.Of("pack-list.none"))
            : PackList.Read(File.ReadAllBytes(file.FullName));
    }

    /// <summary>Whether an entry is a folder and no link to one.</summary>
    public static bool IsFolder(FileSystemInfo entry) => entry is DirectoryInfo && entry.LinkTarget is null;

    /// <summary>Whether a file is no link and, byte for byte, what the list says.</summary>
    public static bool IsAs(FileInfo file, PackedFile listed)
    {
        if (file.LinkTarget is not null || file.Length != listed.Bytes)
        {
            return false;
        }

        if (listed.Bytes == 0)
        {
            return Convert.ToHexStringLower(SHA256.HashData([])) == listed.Sha256;
        }

        using var stream = new FileStream(
            file.FullName,
            FileMode.Open,
            FileAccess.Read,
            FileShare.ReadWrite | FileShare.Delete
        );
        return Convert.ToHexStringLower(SHA256.HashData(stream)) == listed.Sha256;
    }

    private static string Shown(FileSystemInfo entry, string within) =>
        within
        + entry.Name
        + (
            IsFolder(entry) ? "/"
            : entry.LinkTarget is null ? ""
            : " " + Words.Of("program.pack.a-link")
        );
}
