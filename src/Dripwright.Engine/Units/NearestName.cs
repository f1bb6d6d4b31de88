namespace Dripwright.Engine.Units;

/// <summary>Finds the known name that a misspelt one most likely means.</summary>
public static class NearestName
{
    // Longer than any name we know; what is longer is no misspelling, and comparing it would cost time.
    private const int Longest = 64;

    /// <summary>The nearest of the known names, or null when none is near. The first of several equally near.</summary>
    /// <remarks>Near is at most one slip in three letters, two at least; swapped neighbours count as one slip.</remarks>
    public static string? Of(string found, IEnumerable<string> known)
    {
        if (found.Length is 0 or > Longest)
        {
            return null;
        }
        string? nearest = null;
        var least = Math.Max(2, found.Length / 3) + 1;
        foreach (var name in known)
        {
            if (name.Length <= Longest && Math.Abs(name.Length - found.Length) < least)
            {
                var slips = Slips(found, name);
                // One- and two-letter names are all near each other: there only a slip of case or one letter counts.
                if (slips < least && slips < Math.Max(found.Length, name.Length))
                {
                    (nearest, least) = (name, slips);
                }
            }
        }
        return nearest;
    }

    /// <summary>Letters to insert, drop, change or swap with their neighbour (optimal string alignment).</summary>
    public static int Slips(string one, string other)
    {
        var before = new int[other.Length + 1];
        var last = new int[other.Length + 1];
        var row = new int[other.Length + 1];
        for (var j = 0; j <= other.Length; j++)
        {
            last[j] = j;
        }
        for (var i = 1; i <= one.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var (a, b) = (char.ToLowerInvariant(one[i - 1]), char.ToLowerInvariant(other[j - 1]));
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + (a == b ? 0 : 1));
                var swapped =
                    i > 1
                    && j > 1
                    && a == char.ToLowerInvariant(other[j - 2])
                    && b == char.ToLowerInvariant(one[i - 2]);
                if (swapped)
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }
            (before, last, row) = (last, row, before);
        }
        return last[other.Length];
    }
}
