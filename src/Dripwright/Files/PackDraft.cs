using Dripwright.Pack;

namespace Dripwright.Files;

/// <summary>A pack that is being written.</summary>
internal static class PackDraft
{
    /// <summary>Writes all files into a new folder and waits until they are on the disk.</summary>
    /// <remarks>
    /// The list comes first, and each file is written under another name and renamed when it is whole. So whatever a run that is
    /// killed leaves can be told, by the list, from what is not its own.
    /// </remarks>
    /// <param name="draft">The folder to make.</param>
    /// <param name="id">The writer's id.</param>
    /// <param name="list">The pack's list.</param>
    /// <param name="files">The files that it names; the list itself may be among them.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="IOException">The disk failed, or somebody else changed the draft.</exception>
    public static void Write(
        string draft,
        string id,
        PackList list,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        CancellationToken stop
    )
    {
        Directory.CreateDirectory(draft);
        var part = Path.Combine(draft, PackLeftovers.PartOf(id));
        WriteOne(PackList.FileName, list.ToBytes());
        foreach (var folder in list.Folders)
        {
            Directory.CreateDirectory(Path.Combine(draft, folder));
        }

        var names = list.Files.Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var (name, bytes) in files.Where(file => file.Key != PackList.FileName))
        {
            stop.ThrowIfCancellationRequested();
            if (!names.Contains(name))
            {
                throw new InvalidOperationException($"The file '{name}' is not on the list of the build pack.");
            }

            WriteOne(name, bytes);
        }

        foreach (var folder in list.Folders)
        {
            Disk.FlushFolder(Path.Combine(draft, folder));
        }

        Disk.FlushFolder(draft);
        // What takes the pack's name is read back first: half a pack must never be called whole.
        if (!StandingPack.Look(draft, stop).IsWhole)
        {
            throw new IOException("the files that were written are not what was read back.");
        }

        void WriteOne(string name, byte[] bytes)
        {
            Writing.Flushed(part, bytes);
            File.Move(part, Path.Combine(draft, name));
        }
    }
}
