using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>The rows of a rig file for a pattern: pots spread evenly over the rows, crops one after the other.</summary>
internal static class RowsOfPattern
{
    /// <summary>The rows; rows that are alike stand together as one entry.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="brief">The brief.</param>
    /// <param name="like">A row from which all else is taken.</param>
    /// <param name="catalogue">The catalogue, which tells how many plants share a pot where the brief does not.</param>
    public static IReadOnlyList<Row> Of(RowPattern pattern, Brief brief, Row like, PartsCatalogue catalogue)
    {
        var pots = BriefPots.List(brief, catalogue);
        var few = pots.Count / pattern.Rows;
        var longer = pots.Count % pattern.Rows;
        List<Row> rows = [];
        var from = 0;
        for (var i = 0; i < pattern.Rows; i++)
        {
            var count = few + (i < longer ? 1 : 0);
            var planting = Plantings(pots.GetRange(from, count));
            from += count;
            if (rows.Count > 0 && rows[^1].Pots == count && rows[^1].Planting!.SequenceEqual(planting))
            {
                rows[^1] = rows[^1] with { Count = rows[^1].Count + 1 };
                continue;
            }

            rows.Add(
                like with
                {
                    Count = 1,
                    Pots = count,
                    Pot = brief.Pot,
                    Spacing = pattern.Spacing,
                    Arrangement = pattern.Arrangement,
                    LineDistance =
                        pattern.Arrangement == Arrangement.Staggered ? pattern.LineDistance : like.LineDistance,
                    Aisle = brief.Aisle,
                    DrainSide = pattern.Arrangement == Arrangement.Staggered ? Side.Middle : like.DrainSide,
                    Planting = planting,
                }
            );
        }

        return rows;
    }

    private static List<Planting> Plantings(List<(string Crop, int Plants)> pots)
    {
        List<Planting> plantings = [];
        var first = 0;
        for (var i = 1; i <= pots.Count; i++)
        {
            if (i < pots.Count && pots[i] == pots[first])
            {
                continue;
            }

            var range = i - first == 1 ? Labels.Of(first + 1) : $"{Labels.Of(first + 1)}-{Labels.Of(i)}";
            plantings.Add(
                new Planting
                {
                    Pots = range,
                    Crop = pots[first].Crop,
                    Plants = pots[first].Plants,
                }
            );
            first = i;
        }

        return plantings;
    }
}
