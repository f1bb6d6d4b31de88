using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Terminal;

namespace Dripwright.Files;

/// <summary>The place of a pack, and what may be in its way.</summary>
internal static class PackPlace
{
    private const int MostNamed = 10;

    /// <summary>Refuses where something is in the way.</summary>
    /// <param name="target">The target as it was given, for the message.</param>
    /// <param name="place">Its full path.</param>
    /// <param name="replace">Whether a build pack that is there gives way.</param>
    /// <returns>Whether the place is free: nothing there, or an empty folder.</returns>
    public static bool Refuse(string target, string place, bool replace)
    {
        if (File.Exists(place))
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.pack.file", target));
        }

        if (!Directory.Exists(place) || !Directory.EnumerateFileSystemEntries(place).Any())
        {
            return true;
        }

        if (!replace)
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.file.there", target));
        }

        var found = StandingPack.Look(place);
        return found switch
        {
            { List: null, Fault: null } => throw Kept(
                target,
                Words.Of("program.pack.kept.no-list", PackList.FileName),
                found
            ),
            { List: null } => throw Kept(
                target,
                Words.Of("program.pack.kept.bad-list", PackList.FileName, found.Fault),
                found
            ),
            { Foreign.Count: > 0 } => throw Kept(target, Words.Of("program.pack.kept.changed"), found),
            _ => false,
        };
    }

    private static Refusal Kept(string target, string why, StandingPack found)
    {
        var more = found.Foreign.Count - MostNamed;
        return new Refusal(
            Exit.NotWritten,
            Words.Of(
                "program.pack.kept",
                target,
                why,
                more > 0
                    ? Words.Of("program.pack.kept.more", string.Join(", ", found.Foreign.Take(MostNamed)), more)
                    : string.Join(", ", found.Foreign.Take(MostNamed))
            )
        );
    }

    /// <summary>The full path of the folder that a target means. A link to a folder means that folder.</summary>
    /// <exception cref="Refusal">It leads nowhere, or is the root of a disk.</exception>
    public static string Of(string target)
    {
        var place = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        if (new DirectoryInfo(place) is { LinkTarget: not null } link)
        {
            place = Path.TrimEndingDirectorySeparator(link.ResolveLinkTarget(returnFinalTarget: true)!.FullName);
            if (!Path.Exists(place))
            {
                throw new Refusal(Exit.NotWritten, Words.Of("program.pack.link", target, place));
            }
        }

        return Path.GetDirectoryName(place) is null
            ? throw new Refusal(Exit.NotWritten, Words.Of("program.pack.root", target))
            : place;
    }
}
