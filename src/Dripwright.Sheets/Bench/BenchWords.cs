using Dripwright.Engine.Parts;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Bench;

/// <summary>Names of pieces and holes as they stand on a sheet at the bench.</summary>
internal static class BenchWords
{
    /// <summary>"D1-A, D1-B and 6 more": labels as far as they are worth reading.</summary>
    public static string Labels(IReadOnlyList<string> labels, int most = 12) =>
        labels.Count <= most
            ? string.Join(", ", labels)
            : $"{string.Join(", ", labels.Take(most - 1))} and {Wording.Count(labels.Count - most + 1)} more";

    /// <summary>A hole's number with what it serves: "3, pot 2".</summary>
    public static string Hole(HoleMark mark) =>
        mark.Pot > 0
            ? $"{Wording.Count(mark.Number)}, pot\u00a0{Wording.Count(mark.Pot)}"
            : $"{Wording.Count(mark.Number)}, siphon\u00a0break";
}
