using System.Globalization;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>One thing wrong in a file, as values; it becomes words only at the edge.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Path">Path of the field, such as <c>rows[0].spacing</c>; empty for the file as a whole.</param>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Character in the line, counted from 1.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What is allowed there.</param>
/// <param name="Nearest">What was most likely meant; null where nothing is near.</param>
public sealed record Fault(
    string File,
    string Path,
    int Line,
    int Column,
    Phrase Found,
    Phrase Expected,
    string? Nearest = null
)
{
    /// <summary>True where what was meant is a number, which a file writes without quotes.</summary>
    public bool IsNearestBare => Nearest is { } nearest && NumberText.Unquoted(nearest) == nearest;

    /// <summary>Place, keys and values in one line, for a debugger; words are made at the edge.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{File}:{Line}:{Column} {Path}: found {Found}; expected {Expected}"
        );
}
