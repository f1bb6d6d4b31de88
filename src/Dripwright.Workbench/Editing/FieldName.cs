using System.Globalization;
using Dripwright.Language;

namespace Dripwright.Workbench.Editing;

/// <summary>A field's path in a grower's words.</summary>
internal static class FieldName
{
    /// <summary><c>rows[0].standHeight</c> as "row 1, stand height".</summary>
    public static string Of(string path)
    {
        if (path.Length == 0)
        {
            return Words.Of("stage.file").ToLowerInvariant();
        }

        try
        {
            var said = new List<string>();
            var last = "";
            foreach (var (name, index) in FieldPath.Steps(path))
            {
                if (index < 0)
                {
                    last = FormField.Spaced(name);
                    said.Add(Words.Or($"word.{name}", last));
                }
                else
                {
                    said[^1] =
                        Words.Or($"item.{last}", last) + " " + (index + 1).ToString(CultureInfo.InvariantCulture);
                }
            }

            return string.Join(", ", said).ToLowerInvariant();
        }
        catch (FormatException)
        {
            return path;
        }
    }
}
