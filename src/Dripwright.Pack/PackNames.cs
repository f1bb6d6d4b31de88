namespace Dripwright.Pack;

/// <summary>Which names a file of a build pack can have.</summary>
/// <remarks>
/// Letters and digits of ASCII, "-", "_" and "." only, no part that begins or ends with a point: such a name means the same
/// file on every system, cannot lead out of the pack, and needs no escaping in JSON.
/// </remarks>
public static class PackNames
{
    private const int MostParts = 8;
    private const int LongestPart = 120;

    /// <summary>Whether a pack can hold a file of this name.</summary>
    /// <param name="name">Path within the pack, with "/" between its parts.</param>
    public static bool CanHold(string? name)
    {
        if (string.IsNullOrEmpty(name))
        {
            return false;
        }

        var parts = name.Split('/');
        return parts.Length <= MostParts && parts.All(IsPart);
    }

    /// <summary>The folders that a file lies in, outermost first: of "a/b/c.svg" these are "a" and "a/b".</summary>
    /// <param name="name">A name that a pack can hold.</param>
    public static IEnumerable<string> FoldersOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        for (var at = name.IndexOf('/', StringComparison.Ordinal); at > 0; at = name.IndexOf('/', at + 1))
        {
            yield return name[..at];
        }
    }

    private static bool IsPart(string part) =>
        part.Length is > 0 and <= LongestPart
        && part[0] != '.'
        && part[^1] != '.'
        && part.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.');
}
