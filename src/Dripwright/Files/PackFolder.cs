using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Terminal;

namespace Dripwright.Files;

/// <summary>Writes a folder of files at once or not at all, and replaces a build pack without touching anything else.</summary>
/// <remarks>
/// <para>
/// Everything is written into a hidden folder beside the target, flushed to the disk and read back; only then does it take the target's
/// name. A pack that is there changes names with it in one step where the system can (Linux); elsewhere it is moved aside
/// first, and the next run gives it back should this one be killed in between. So under the target's name there is the old
/// pack or the new one, whole.
/// </para>
/// <para>
/// A folder is replaced only where its own list names everything in it and all is, byte for byte, as the list says. That is
/// looked at before the work, before the exchange, and once more for each file before it is removed.
/// </para>
/// </remarks>
internal static class PackFolder
{
    /// <summary>Refuses what <see cref="Write"/> would refuse, before the work that makes the files.</summary>
    /// <param name="target">The folder to make.</param>
    /// <param name="replace">Whether a build pack that is there gives way.</param>
    /// <exception cref="Refusal">Something is in the way.</exception>
    public static void Check(string target, bool replace)
    {
        try
        {
            PackPlace.Refuse(target, PackPlace.Of(target), replace);
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            throw NotWritten(target, wrong);
        }
    }

    /// <summary>Writes the files.</summary>
    /// <param name="target">The folder to make. A link to a folder stays a link: the folder it leads to is written.</param>
    /// <param name="list">The list of the files.</param>
    /// <param name="files">Bytes by the names of the list; the list itself may be among them.</param>
    /// <param name="replace">Whether a build pack that is there gives way.</param>
    /// <param name="stop">Asks to stop; then nothing is left behind.</param>
    /// <param name="rules">How it is written; the usual way where null.</param>
    /// <returns>What the person should know although all is written; empty as a rule.</returns>
    /// <exception cref="Refusal">Something is in the way or cannot be written.</exception>
    public static IReadOnlyList<string> Write(
        string target,
        PackList list,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        bool replace,
        CancellationToken stop,
        PackRules? rules = null
    )
    {
        try
        {
            var beside = new BesidePack(PackPlace.Of(target));
            var made = MakeParents(beside.Parent);
            try
            {
                return WriteLocked(target, beside, list, files, replace, rules ?? new PackRules(), stop);
            }
            catch
            {
                RemoveEmpty(made);
                throw;
            }
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            throw NotWritten(target, wrong);
        }
    }

    private static List<string> WriteLocked(
        string target,
        BesidePack beside,
        PackList list,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        bool replace,
        PackRules rules,
        CancellationToken stop
    )
    {
        using var held = WriterLock.Take(beside.Lock, target, rules.Lock, stop);
        List<string> notes = [];
        try
        {
            return WriteHeld(target, beside, held, list, files, replace, rules, notes, stop);
        }
        catch (Refusal refusal) when (notes.Count > 0)
        {
            throw new Refusal(refusal.ExitCode, [.. refusal.Messages, .. notes]);
        }
    }

    private static List<string> WriteHeld(
        string target,
        BesidePack beside,
        WriterLock held,
        PackList list,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        bool replace,
        PackRules rules,
        List<string> notes,
        CancellationToken stop
    )
    {
        PackLeftovers.Tidy(beside, notes);
        PackPlace.Refuse(target, beside.Place, replace);
        var draft = beside.Draft(held.Id);
        try
        {
            PackDraft.Write(draft, held.Id, list, files, stop);
            Disk.FlushFolder(beside.Parent);
            rules.BeforeChange?.Invoke();
            // Somebody may have put something there while the pack was written.
            var isFree = PackPlace.Refuse(target, beside.Place, replace);
            stop.ThrowIfCancellationRequested();
            if (!held.IsHeld)
            {
                throw new Refusal(Exit.NotWritten, Words.Of("program.pack.overtaken", target));
            }

            var old = TakePlace(beside, held.Id, isFree, rules);
            rules.AfterChange?.Invoke();
            Finish(beside, old, held.Id, notes);
            return notes;
        }
        catch
        {
            if (Directory.Exists(draft))
            {
                PackLeftovers.Discard(beside, draft, held.Id, []);
            }

            throw;
        }
    }

    /// <summary>Gives the draft the pack's name.</summary>
    /// <returns>Where the pack that was there lies now; null where there was none.</returns>
    private static string? TakePlace(BesidePack beside, string id, bool isFree, PackRules rules)
    {
        var draft = beside.Draft(id);
        if (isFree)
        {
            Disk.MoveToFreePlace(draft, beside.Place);
            return null;
        }

        if (rules.Exchanges && Disk.TryExchange(draft, beside.Place))
        {
            return draft;
        }

        var old = beside.Old(id);
        Directory.Move(beside.Place, old);
        try
        {
            Directory.Move(draft, beside.Place);
        }
        catch
        {
            Directory.Move(old, beside.Place);
            throw;
        }

        return old;
    }

    // From here on the new pack is there: what goes wrong is told, and is no reason to say that nothing was changed.
    private static void Finish(BesidePack beside, string? old, string id, List<string> notes)
    {
        try
        {
            Disk.FlushFolder(beside.Parent);
        }
        catch (IOException wrong)
        {
            notes.Add(Words.Of("program.pack.unconfirmed", beside.Place, SystemReason.Of(wrong)));
        }

        if (old is not null)
        {
            PackLeftovers.Discard(beside, old, id, notes);
        }
    }

    private static Refusal NotWritten(string target, Exception wrong) =>
        new(Exit.NotWritten, Words.Of("program.pack.unwritten", target, SystemReason.Of(wrong)));

    private static List<string> MakeParents(string parent)
    {
        List<string> missing = [];
        for (var at = parent; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at))
        {
            missing.Add(at);
        }

        Directory.CreateDirectory(parent);
        return missing;
    }

    // Innermost first, as they were collected.
    private static void RemoveEmpty(List<string> made)
    {
        foreach (var folder in made)
        {
            if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
            {
                Directory.Delete(folder);
            }
        }
    }
}
