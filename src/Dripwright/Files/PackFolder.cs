using System.Diagnostics;
using System.Globalization;

namespace Dripwright.Files;

/// <summary>Writes a folder of files at once or not at all.</summary>
/// <remarks>
/// Everything is written into a hidden folder beside the target and flushed to the disk; only then does it take the
/// target's name. A folder that stands there is moved aside first and removed last, so that at every moment there is
/// either the old pack or the new one. What a run that was killed left behind is tidied by the next one.
/// </remarks>
internal static class PackFolder
{
    /// <summary>Only a folder that holds these is taken for a build pack and replaced.</summary>
    private static readonly string[] s_marks = ["build-pack.pdf", "plan.json"];

    /// <summary>Refuses what <see cref="Write"/> would refuse, before the work that makes the files.</summary>
    /// <param name="target">The folder to make.</param>
    /// <param name="replace">Whether a build pack that stands there gives way.</param>
    /// <exception cref="Refusal">Something stands in the way.</exception>
    public static void Check(string target, bool replace)
    {
        try
        {
            RefuseWhatStandsThere(target, Path.TrimEndingDirectorySeparator(Path.GetFullPath(target)), replace);
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            throw new Refusal(Exit.NotWritten, $"{target}: cannot be written: {wrong.Message} Nothing was changed.");
        }
    }

    /// <summary>Writes the files.</summary>
    /// <param name="target">The folder to make.</param>
    /// <param name="files">Bytes by name relative to the folder, with "/" between parts of a name.</param>
    /// <param name="replace">Whether a build pack that stands there gives way.</param>
    /// <param name="stop">Asks to stop; then nothing is left behind.</param>
    /// <exception cref="Refusal">Something stands in the way or cannot be written.</exception>
    public static void Write(
        string target,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        bool replace,
        CancellationToken stop
    )
    {
        try
        {
            var place = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
            var parent =
                Path.GetDirectoryName(place)
                ?? throw new Refusal(Exit.NotWritten, $"{target}: cannot be a build pack: it is the root of a disk.");
            RecoverAndTidy(place, parent);
            RefuseWhatStandsThere(target, place, replace);
            var made = MakeParents(parent);
            try
            {
                WriteBesideAndSwap(place, parent, files, stop);
            }
            catch
            {
                RemoveEmpty(made);
                throw;
            }
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            throw new Refusal(Exit.NotWritten, $"{target}: cannot be written: {wrong.Message} Nothing was changed.");
        }
    }

    private static void WriteBesideAndSwap(
        string place,
        string parent,
        IEnumerable<KeyValuePair<string, byte[]>> files,
        CancellationToken stop
    )
    {
        var draft = Beside(place, parent, "draft");
        try
        {
            Directory.CreateDirectory(draft);
            foreach (var (name, bytes) in files)
            {
                stop.ThrowIfCancellationRequested();
                var path = Inside(draft, name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                Writing.Flushed(path, bytes);
            }

            stop.ThrowIfCancellationRequested();
            Swap(draft, place, Beside(place, parent, "old"));
        }
        finally
        {
            if (Directory.Exists(draft))
            {
                Directory.Delete(draft, recursive: true);
            }
        }
    }

    private static void Swap(string draft, string place, string aside)
    {
        if (!Directory.Exists(place))
        {
            Directory.Move(draft, place);
            return;
        }

        Directory.Move(place, aside);
        try
        {
            Directory.Move(draft, place);
        }
        catch
        {
            Directory.Move(aside, place);
            throw;
        }

        Directory.Delete(aside, recursive: true);
    }

    private static void RefuseWhatStandsThere(string target, string place, bool replace)
    {
        if (File.Exists(place))
        {
            throw new Refusal(Exit.NotWritten, $"{target}: is a file; a build pack is a folder. Give another name.");
        }

        if (!Directory.Exists(place) || !Directory.EnumerateFileSystemEntries(place).Any())
        {
            return;
        }

        if (!replace)
        {
            throw new Refusal(Exit.NotWritten, $"{target}: is there already. Give another name, or --replace.");
        }

        // --replace removes the old folder with all that is in it: a slip of the hand must not take a home folder.
        if (!s_marks.All(mark => File.Exists(Path.Combine(place, mark))))
        {
            throw new Refusal(
                Exit.NotWritten,
                $"{target}: is not replaced, for it is no build pack (no {string.Join(", no ", s_marks)} in it)."
            );
        }
    }

    private static string Inside(string folder, string name)
    {
        var path = Path.GetFullPath(Path.Combine(folder, name));
        return path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? path
            : throw new InvalidOperationException($"The file '{name}' would lie outside the build pack.");
    }

    private static string Beside(string place, string parent, string what) =>
        Path.Combine(
            parent,
            $".{Path.GetFileName(place)}.{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}.{what}"
        );

    private static void RecoverAndTidy(string place, string parent)
    {
        if (!Directory.Exists(parent))
        {
            return;
        }

        var start = $".{Path.GetFileName(place)}.";
        foreach (var what in new[] { ".old", ".draft" })
        {
            foreach (var left in Directory.EnumerateDirectories(parent).ToList())
            {
                var name = Path.GetFileName(left);
                if (
                    name.StartsWith(start, StringComparison.Ordinal)
                    && name.EndsWith(what, StringComparison.Ordinal)
                    && name.Length > start.Length + what.Length
                    && int.TryParse(
                        name.AsSpan(start.Length, name.Length - start.Length - what.Length),
                        NumberStyles.None,
                        CultureInfo.InvariantCulture,
                        out var writer
                    )
                    && !IsRunning(writer)
                )
                {
                    Settle(left, place, isOld: what == ".old");
                }
            }
        }
    }

    // A run killed between its two renames left the old pack aside and nothing in its place: give it back.
    private static void Settle(string left, string place, bool isOld)
    {
        if (isOld && !Directory.Exists(place))
        {
            Directory.Move(left, place);
        }
        else
        {
            Directory.Delete(left, recursive: true);
        }
    }

    private static bool IsRunning(int process)
    {
        if (process == Environment.ProcessId)
        {
            return false;
        }

        try
        {
            using var other = Process.GetProcessById(process);
            return !other.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

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
