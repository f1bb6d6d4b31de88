using System.Text;

namespace Dripwright.Language;

/// <summary>A language that nobody speaks: every English text marked and lengthened.</summary>
/// <remarks>
/// What is seen without the marks does not come from the texts; what breaks would break in a language of longer words.
/// The name of its culture is the one that platforms keep for this use.
/// </remarks>
internal static class Pseudo
{
    /// <summary>The name of its culture.</summary>
    public const string Culture = "qps-ploc";

    /// <summary>Stands before every text.</summary>
    public const char Start = '⟦';

    /// <summary>Stands after every text.</summary>
    public const char End = '⟧';

    private const int LongWord = 12;

    private const string Plain = "aeiouAEIOU";
    private const string Marked = "áéíóúÁÉÍÓÚ";

    /// <summary>The texts made from English ones.</summary>
    /// <param name="english">The English texts.</param>
    public static Texts Of(Texts english) =>
        new(Culture, english.ByKey.ToDictionary(pair => pair.Key, pair => Of(pair.Value), StringComparer.Ordinal));

    /// <summary>One text, marked and lengthened; one that is marked already stays as it is.</summary>
    /// <param name="text">The English text.</param>
    public static string Of(string text)
    {
        if (text.Length == 0 || text[0] == Start)
        {
            return text;
        }

        var made = new StringBuilder().Append(Start);
        var depth = 0;
        foreach (var letter in text)
        {
            depth += letter == '{' ? 1 : 0;
            var at = depth == 0 ? Plain.IndexOf(letter, StringComparison.Ordinal) : -1;
            made.Append(at < 0 ? letter : Marked[at]);
            depth -= letter == '}' ? 1 : 0;
        }

        // A third longer, as texts from English often become, in words no longer than those of a language that joins them.
        for (var left = text.Length / 3; left > 0; left -= LongWord)
        {
            made.Append('~', Math.Min(left, LongWord)).Append(left > LongWord ? " " : "");
        }

        return made.Append(End).ToString();
    }
}
