using System.Text;

namespace Dripwright.Screen;

/// <summary>Text from files made safe for a terminal.</summary>
internal static class Plain
{
    /// <summary>The text with every control character replaced, so that no file can steer the terminal.</summary>
    public static string Line(string text)
    {
        if (!text.Any(char.IsControl))
        {
            return text;
        }

        var safe = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            safe.Append(
                letter is '\n' or '\t' ? ' '
                : char.IsControl(letter) ? '\uFFFD'
                : letter
            );
        }

        return safe.ToString();
    }
}
