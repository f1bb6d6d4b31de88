using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>A finding with its number on the cover sheet and the place in the room that it speaks of.</summary>
/// <param name="Number">Number in the list of findings, from 1.</param>
/// <param name="Level">How grave it is.</param>
/// <param name="What">What it says.</param>
/// <param name="Row">Row, from 1; 0 for reservoir and pump.</param>
/// <param name="At">The place; null where only the row is meant.</param>
internal sealed record PlacedFinding(int Number, FindingLevel Level, string What, int Row, Vector3? At)
{
    /// <summary>How grave, as it is marked.</summary>
    public Grade Grade => FindingMarks.GradeOf(Level);
}

/// <summary>Finds the place in the room that a finding speaks of.</summary>
internal static class FindingMarks
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
        var told = new PlanWords(plan.Rig.Units).Of(plan.Findings);
        for (var i = 0; i < plan.Findings.Count; i++)
        {
            if (Where(plan.Layout, plan.Findings[i].Places[0]) is var (row, at))
            {
                placed.Add(new(i + 1, plan.Findings[i].Level, told[i].What, row, at));
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
        var places = DimensionLine.Spread([.. shown.Select(f => x(f.At!.Value))], Pitch, low, Math.Max(low, high));
        return shown.Zip(places);
    }

    private static (int Row, Vector3? At)? Where(RigLayout layout, Place place)
    {
        if (place.Run.Length > 0 && layout.Runs.FirstOrDefault(r => r.Label == place.Run) is { } run)
        {
            var hole = place.Hole > 0 && place.Hole <= run.Holes.Count ? run.Holes[place.Hole - 1] : null;
            return (run.Row, hole is null && run.Row > 0 ? null : run.At(hole?.Station ?? ((run.Start + run.End) / 2)));
        }

        if (place.Row >= 1 && place.Row <= layout.Rows.Count)
        {
            var pots = layout.Rows[place.Row - 1].Pots;
            return place.Pot >= 1 && place.Pot <= pots.Count
                ? (place.Row, pots[place.Pot - 1].Base)
                : (place.Row, null);
        }

        // Rows, pump and reservoir not told apart: the reservoir stands for what belongs to it.
        return place.Part is PlacePart.None ? null : (0, null);
    }
}
