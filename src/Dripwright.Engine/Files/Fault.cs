using System.Globalization;
using System.Text;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Files;

/// <summary>One thing wrong in a file.</summary>
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
    string Found,
    string Expected,
    string? Nearest = null
)
{
    /// <summary>True where what was meant is a number, which a file writes without quotes.</summary>
    public bool IsNearestBare => Nearest is { } nearest && NumberText.Unquoted(nearest) == nearest;

    /// <summary>The fault in one line, such as <c>school.rig.json:14:17 rows[0].spacing: found "1 foots"; expected a length such as "1 ft"; did you mean "1 ft"?</c></summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column} ");
        if (Path.Length > 0)
        {
            text.Append(Path).Append(": ");
        }
        text.Append("found ").Append(Found).Append("; expected ").Append(Expected);
        if (Nearest is not null)
        {
            text.Append("; did you mean ")
                .Append(IsNearestBare ? $"{Nearest}, without quotes" : $"\"{Nearest}\"")
                .Append('?');
        }
        return text.ToString();
    }
}
