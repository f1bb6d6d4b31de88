using System.Text;

namespace Dripwright.Sheets.Writing;

/// <summary>Text inside XML.</summary>
internal static class Xml
{
    /// <summary>Escaped for content and attributes; what XML 1.0 forbids becomes U+FFFD.</summary>
    public static string Escape(string text)
    {
        var result = new StringBuilder(text.Length);
        // Lone surrogates come out of EnumerateRunes as U+FFFD already.
        foreach (var rune in text.EnumerateRunes())
        {
            result.Append(
                rune.Value switch
                {
                    '&' => "&amp;",
                    '<' => "&lt;",
                    '>' => "&gt;",
                    '"' => "&quot;",
                    '\t' or '\n' or '\r' => " ",
                    < 0x20 or 0xFFFE or 0xFFFF => "\uFFFD",
                    _ => rune.ToString(),
                }
            );
        }

        return result.ToString();
    }
}
