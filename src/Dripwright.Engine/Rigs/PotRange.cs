using System.Globalization;

namespace Dripwright.Engine.Rigs;

/// <summary>Pots of a row as a person writes them: "1-6", "3", "1-4, 9" or "all".</summary>
public static class PotRange
{
    /// <summary>The pots named, in order, each once.</summary>
    /// <param name="text">What was written; the reader has checked it.</param>
    /// <param name="pots">Pots in the row.</param>
    /// <exception cref="FormatException">The text is not a list of pots.</exception>
    public static IReadOnlyList<int> Parse(string text, int pots)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Trim() == "all")
        {
            return [.. Enumerable.Range(1, pots)];
        }

        SortedSet<int> named = [];
        foreach (string part in text.Split(','))
        {
            string[] ends = part.Split('-');
            int first = int.Parse(ends[0], CultureInfo.InvariantCulture);
            int last = int.Parse(ends[^1], CultureInfo.InvariantCulture);
            for (int pot = first; pot <= last; pot++)
            {
                named.Add(pot);
            }
        }

        return [.. named];
    }
}
