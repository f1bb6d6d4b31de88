using System.Globalization;
using Dripwright.Pack;

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
            throw new Refusal(Exit.NotWritten, $"{target}: is a file; a build pack is a folder. Give another name.");
        }

        if (!Directory.Exists(place) || !Directory.EnumerateFileSystemEntries(place).Any())
        {
            return true;
        }

        if (!replace)
        {
            throw new Refusal(Exit.NotWritten, $"{target}: is there already. Give another name, or --replace.");
        }

        var found = StandingPack.Look(place);
        return found switch
        {
            { List: null, Fault: null } => throw Kept(
                target,
                $"it has no {PackList.FileName}, which tells the pack's own files from yours",
                found
            ),
            { List: null } => throw Kept(target, $"its {PackList.FileName} cannot be trusted ({found.Fault})", found),
            { Foreign.Count: > 0 } => throw Kept(
                target,
                "not everything in it is an unchanged file of the pack",
                found
            ),
            _ => false,
        };
    }

    private static Refusal Kept(string target, string why, StandingPack found)
    {
        var more = found.Foreign.Count - MostNamed;
        return new Refusal(
            Exit.NotWritten,
            $"{target}: not replaced, nothing was changed: {why}. Found {string.Join(", ", found.Foreign.Take(MostNamed))}"
                + (more > 0 ? string.Create(CultureInfo.InvariantCulture, $" and {more} more") : "")
                + ". Move what you want to keep to another folder and delete this one yourself, or give another name for the new pack."
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
                throw new Refusal(
                    Exit.NotWritten,
                    $"{target}: is a link to {place}, and there is nothing. Make that folder, or give another name."
                );
            }
        }

        return Path.GetDirectoryName(place) is null
            ? throw new Refusal(Exit.NotWritten, $"{target}: cannot be a build pack: it is the root of a disk.")
            : place;
    }
}
