using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>A finding with its number on the cover sheet and the place in the room that it speaks of.</summary>
/// <param name="Number">Number in the list of findings, from 1.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Row">Row, from 1; 0 for reservoir and pump.</param>
/// <param name="At">The place; null where only the row is meant.</param>
internal sealed record PlacedFinding(int Number, Finding Finding, int Row, Vector3? At)
{
    /// <summary>How grave, as it is marked.</summary>
    public Grade Grade => FindingMarks.GradeOf(Finding.Level);
}

/// <summary>Finds the place in the room that a finding speaks of.</summary>
internal static partial class FindingMarks
{
    /// <summary>The mark of a level.</summary>
    public static Grade GradeOf(FindingLevel level) =>
        level switch
        {
            FindingLevel.Stop => Grade.Stop,
            FindingLevel.Mend => Grade.Mend,
            _ => Grade.Note,
        };

    /// <summary>Every finding whose place can be told.</summary>
    public static IReadOnlyList<PlacedFinding> Of(Plan plan)
    {
        List<PlacedFinding> placed = [];
        for (var i = 0; i < plan.Findings.Count; i++)
        {
            if (Place(plan.Layout, plan.Findings[i].Place) is var (row, at))
            {
                placed.Add(new(i + 1, plan.Findings[i], row, at));
            }
        }

        return placed;
    }

    /// <summary>[mm] From one mark to the next.</summary>
    public const double Pitch = 8.5;

    /// <summary>
    /// Marks side by side near their places, between two limits; the gravest where not all have room, for the cover sheet
    /// lists every one.
    /// </summary>
    /// <param name="findings">Findings with a place.</param>
    /// <param name="x">[mm] Where a place falls on the paper.</param>
    /// <param name="low">[mm] Leftmost middle of a mark.</param>
    /// <param name="high">[mm] Rightmost middle of a mark.</param>
    public static IEnumerable<(PlacedFinding Finding, double X)> Along(
        IEnumerable<PlacedFinding> findings,
        Func<Vector3, double> x,
        double low,
        double high
    )
    {
        var room = 1 + (int)Math.Floor(Math.Max(0, high - low) / Pitch);
        var shown = findings
            .Where(f => f.At is not null)
            .OrderBy(f => f.Number)
            .Take(room)
            .OrderBy(f => x(f.At!.Value))
            .ToList();
        var places = Drawing.Dimension.Spread([.. shown.Select(f => x(f.At!.Value))], Pitch, low, Math.Max(low, high));
        return shown.Zip(places);
    }

    private static (int Row, Vector3? At)? Place(RigLayout layout, string place)
    {
        if (RunName().Match(place) is { Success: true } named)
        {
            var run = layout.Runs.FirstOrDefault(r => r.Label == named.Groups["n"].Value);
            if (run is not null)
            {
                var hole = Numbered(HoleName(), place) is { } n && n <= run.Holes.Count ? run.Holes[n - 1] : null;
                return (
                    run.Row,
                    hole is null && run.Row > 0 ? null : run.At(hole?.Station ?? ((run.Start + run.End) / 2))
                );
            }
        }

        if (Numbered(RowName(), place) is { } row && row >= 1 && row <= layout.Rows.Count)
        {
            var pots = layout.Rows[row - 1].Pots;
            return Numbered(PotName(), place) is { } pot && pot >= 1 && pot <= pots.Count
                ? (row, pots[pot - 1].Base)
                : (row, null);
        }

        // Rows, pump and reservoir not told apart: the reservoir stands for what belongs to it.
        return place.Contains("reservoir", StringComparison.Ordinal) || place.Contains("pump", StringComparison.Ordinal)
            ? (0, null)
            : null;
    }

    private static int? Numbered(Regex pattern, string text) =>
        pattern.Match(text) is { Success: true } match
        && int.TryParse(match.Groups["n"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;

    [GeneratedRegex(@"\brun (?<n>[A-Z][A-Za-z0-9]*)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex RunName();

    [GeneratedRegex(@"\bhole (?<n>[0-9]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HoleName();

    [GeneratedRegex(@"\brow (?<n>[0-9]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex RowName();

    [GeneratedRegex(@"\bpot (?<n>[0-9]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PotName();
}
