using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>How the pots stand in the room.</summary>
/// <param name="Across">True where the rows run along the room's width.</param>
/// <param name="Arrangement">Single or staggered.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Pots">Pots in the longest row.</param>
/// <param name="Spacing">[m] Along the row, as the rig file means it.</param>
/// <param name="LineDistance">[m] Between the lines of a staggered row.</param>
internal sealed record RowPattern(
    bool Across,
    Arrangement Arrangement,
    int Rows,
    int Pots,
    double Spacing,
    double LineDistance
)
{
    /// <summary>[m] From the first pot's edge to the last one's.</summary>
    public double Length(PotType pot) => ((Pots - 1) * Spacing) + pot.Length;

    /// <summary>[m] Of one row, pot edge to pot edge.</summary>
    public double Depth(PotType pot) => pot.Width + (Arrangement == Arrangement.Staggered ? LineDistance : 0);
}

/// <summary>The patterns that a room can hold, before pipes and reservoir are placed.</summary>
internal static class RowPatterns
{
    /// <summary>Every pattern that may fit, few rows first.</summary>
    public static List<RowPattern> Of(Brief brief, PotType pot, PartsCatalogue catalogue)
    {
        var pots = BriefPots.Count(brief, catalogue);
        List<RowPattern> patterns = [];
        foreach (var lane in Lanes(brief, pot, catalogue))
        {
            // One row more is worth trying only where it makes the rows shorter.
            var before = 0;
            for (var rows = 1; rows <= Math.Min(lane.MostRows, pots); rows++)
            {
                var each = (pots + rows - 1) / rows;
                if (each != before && each <= lane.MostPots)
                {
                    patterns.Add(new(lane.Across, lane.Arrangement, rows, each, lane.Spacing, lane.LineDistance));
                }

                before = each;
            }
        }

        return [.. patterns.OrderBy(p => p.Rows).ThenBy(p => p.Across).ThenBy(p => p.Arrangement)];
    }

    /// <summary>Most pots that the room holds at the brief's spacing.</summary>
    public static int Capacity(Brief brief, PotType pot, PartsCatalogue catalogue) =>
        Lanes(brief, pot, catalogue).Max(l => Math.Max(0, l.MostRows) * Math.Max(0, l.MostPots));

    private static IEnumerable<Lane> Lanes(Brief brief, PotType pot, PartsCatalogue catalogue)
    {
        var spacing = BriefPots.Spacing(brief, pot.Length, catalogue);
        var step = brief.Units == UnitSystem.Us ? 0.0127 : 0.01;
        foreach (var across in new[] { false, true })
        {
            var along = across ? brief.Site.RoomWidth : brief.Site.RoomLength;
            var deep = across ? brief.Site.RoomLength : brief.Site.RoomWidth;
            yield return Lane.Of(across, Arrangement.Single, spacing, 0, along, deep, brief.Aisle, pot);

            // Every pot as far from its neighbours in the other line as from those in its own: a net of equal triangles.
            var half = RoundedUp(spacing / 2, step);
            var between = RoundedUp(Math.Max(pot.Width, spacing * Math.Sqrt(3) / 2), step);
            yield return Lane.Of(across, Arrangement.Staggered, half, between, along, deep, brief.Aisle, pot);
        }
    }

    private static double RoundedUp(double length, double step) => Math.Ceiling((length / step) - 1e-9) * step;

    private sealed record Lane(
        bool Across,
        Arrangement Arrangement,
        double Spacing,
        double LineDistance,
        int MostRows,
        int MostPots
    )
    {
        public static Lane Of(
            bool across,
            Arrangement arrangement,
            double spacing,
            double lineDistance,
            double along,
            double deep,
            double aisle,
            PotType pot
        ) =>
            new(
                across,
                arrangement,
                spacing,
                lineDistance,
                (int)Math.Floor((deep / (aisle + pot.Width + lineDistance)) + 1e-9),
                along < pot.Length ? 0 : (int)Math.Floor(((along - pot.Length) / spacing) + 1e-9) + 1
            );
    }
}
