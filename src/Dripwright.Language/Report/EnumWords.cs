using System.Text;

namespace Dripwright.Language.Report;

/// <summary>Names of choices as the rig file writes them: lower case with dashes.</summary>
internal static class EnumWords
{
    /// <summary>"BothEnds" becomes "both-ends".</summary>
    public static string Of<T>(T value)
        where T : struct, Enum
    {
        var text = new StringBuilder();
        foreach (var letter in value.ToString())
        {
            if (char.IsAsciiLetterUpper(letter) && text.Length > 0)
            {
                text.Append('-');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
