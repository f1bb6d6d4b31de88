using System.Globalization;

namespace Dripwright.Engine.Files;

/// <summary>Whole numbers of a file. As in JSON Schema, 2.0 and 2e0 are whole too.</summary>
internal static class WholeNumber
{
    public static bool TryRead(FileNode node, out int whole)
    {
        whole = 0;
        var isWhole =
            node is FileNumber number
            && decimal.TryParse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value == decimal.Truncate(value)
            && value is >= int.MinValue and <= int.MaxValue
            && (whole = (int)value) == value;
        return isWhole;
    }
}
