using Dripwright.Language;
using Dripwright.Pack;

namespace Dripwright.Files;

/// <summary>Removes packs and drafts, and never anything else.</summary>
internal static class PackLeftovers
{
    /// <summary>The name under which a file of a draft is written; it gets its own name when it is whole.</summary>
    /// <param name="id">The writer's id.</param>
    public static string PartOf(string id) => $".{id}.part";

    /// <summary>Settles what writers left that were broken off. Only for the one that holds the lock.</summary>
    /// <param name="beside">The names.</param>
    /// <param name="notes">Told where something was kept or could not be removed.</param>
    public static void Tidy(BesidePack beside, List<string> notes)
    {
        foreach (var (folder, id) in beside.Left("gone"))
        {
            Discard(beside, folder, id, notes);
        }

        foreach (var (folder, id) in beside.Left("old"))
        {
            // A writer killed between its two renames left the pack aside and nothing in its place: give it back.
            if (!Path.Exists(beside.Place))
            {
                Directory.Move(folder, beside.Place);
            }
            else
            {
                Discard(beside, folder, id, notes);
            }
        }

        foreach (var (folder, id) in beside.Left("draft"))
        {
            Discard(beside, folder, id, notes);
        }
    }

    /// <summary>
    /// Removes a folder file by file: what its own list names and what is, byte for byte, as the list says. Anything else stays, and
    /// the folder with it, under a plain name.
    /// </summary>
    /// <param name="beside">The names.</param>
    /// <param name="folder">A draft, or a pack that was replaced.</param>
    /// <param name="id">The id of the writer that the folder is of.</param>
    /// <param name="notes">Told where something was kept or could not be removed.</param>
    public static void Discard(BesidePack beside, string folder, string id, List<string> notes)
    {
        try
        {
            // Renamed before it is emptied: a writer that was taken for dead and wakes up must not find half of its draft.
            var gone = beside.Gone(id);
            if (folder != gone)
            {
                Directory.Move(folder, gone);
            }

            Empty(gone, id);
            if (Directory.EnumerateFileSystemEntries(gone).Any())
            {
                notes.Add(Words.Of("program.pack.left", beside.Keep(gone)));
            }
            else
            {
                Directory.Delete(gone);
            }
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            notes.Add(Words.Of("program.pack.old", folder, SystemReason.Of(wrong)));
        }
    }

    private static void Empty(string folder, string id)
    {
        if (new FileInfo(Path.Combine(folder, PartOf(id))) is { Exists: true, LinkTarget: null } part)
        {
            part.Delete();
        }

        if (StandingPack.ListOf(folder).List is not { } list)
        {
            return;
        }

        var files = list.Files.ToDictionary(file => file.Name, StringComparer.Ordinal);
        Clear(new DirectoryInfo(folder), "");
        // Last of all, so that a run that is killed here can be finished by the next one.
        File.Delete(Path.Combine(folder, PackList.FileName));

        void Clear(DirectoryInfo at, string within)
        {
            foreach (var entry in at.EnumerateFileSystemInfos().ToList())
            {
                var name = within + entry.Name;
                if (StandingPack.IsFolder(entry) && list.Folders.Contains(name))
                {
                    Clear((DirectoryInfo)entry, name + "/");
                    if (!Directory.EnumerateFileSystemEntries(entry.FullName).Any())
                    {
                        entry.Delete();
                    }
                }
                else if (
                    entry is FileInfo file
                    && files.TryGetValue(name, out var listed)
                    && StandingPack.IsAs(file, listed)
                )
                {
                    file.Delete();
                }
            }
        }
    }
}
