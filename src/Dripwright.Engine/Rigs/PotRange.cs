using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>Pots of a row, named as "1-6", "3", "1-4, 9" or "all", counted from 1 at the left end.</summary>
public static class PotRange
{
    /// <summary>The pots a text names, in rising order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="pots">Pots in the row, at least 1.</param>
    /// <param name="named">The pots named; empty where the text is wrong.</param>
    /// <param name="expected">What was expected, where the text is wrong; else nothing.</param>
    /// <returns>Whether the text names pots of the row, each once.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A row has at least one pot.</exception>
    public static bool TryParse(string text, int pots, out IReadOnlyList<int> named, out Phrase expected)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfLessThan(pots, 1);
        expected = Phrase.None;
        named = [];
        if (text.Trim().Equals("all", StringComparison.OrdinalIgnoreCase))
        {
            named = [.. Enumerable.Range(1, pots)];
            return true;
        }
        var found = new bool[pots + 1];
        foreach (var part in text.Split(','))
        {
            var ends = part.Replace('–', '-').Split('-');
            var (first, last) = (0, 0);
            var good = ends.Length <= 2 && TryPot(ends[0], out first) && TryPot(ends[^1], out last);
            if (!good)
            {
                expected = Phrase.Of("fault.pots");
            }
            else if (first < 1 || last < first || last > pots)
            {
                expected = Phrase.Of("fault.pots-of-row", pots);
            }
            else
            {
                for (var pot = first; pot <= last && expected.IsNone; pot++)
                {
                    if (found[pot])
                    {
                        expected = Phrase.Of("fault.pot-twice", pot);
                    }
                    found[pot] = true;
                }
            }
            if (!expected.IsNone)
            {
                return false;
            }
        }
        named = [.. Enumerable.Range(1, pots).Where(pot => found[pot])];
        return true;
    }

    /// <summary>The pots a text names that is known to be good.</summary>
    /// <param name="text">The text.</param>
    /// <param name="pots">Pots in the row, at least 1.</param>
    /// <exception cref="FormatException">The text names no pots of the row.</exception>
    public static IReadOnlyList<int> Parse(string text, int pots) =>
        TryParse(text, pots, out var named, out var expected)
            ? named
            : throw new FormatException($"\"{text}\": expected {expected}.");

    private static bool TryPot(string text, out int pot) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out pot);
}
