using Dripwright.Engine;
using Dripwright.Language;

namespace Dripwright.Sheets.Lists;

/// <summary>Parts, cuts and holes as CSV files for a spreadsheet. Units stand in the names of the columns, which are the same in every language.</summary>
/// <remarks>Handbook page: docs/handbook/build-pack.md</remarks>
public static class PlanLists
{
    /// <summary>One line for each part to have.</summary>
    /// <param name="plan">The plan.</param>
    public static byte[] Parts(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var told = new PlanWords(plan.Rig.Units);
        return CsvText.Write(
            [
                "section",
                "part",
                "name",
                "for",
                "needed",
                "spares",
                "on_hand",
                "buy",
                "unit",
                "packs",
                "pack_size",
                "each_length_mm",
                "each_length_in",
                "price",
                "price_is_made_up",
                "note",
            ],
            plan.Parts.Lines.Select(line =>
                (IReadOnlyList<object?>)
                    [
                        line.Section,
                        line.Part,
                        told.Of(line.Name),
                        told.Of(line.Where),
                        line.Needed,
                        line.Spares,
                        line.OnHand,
                        line.Buy,
                        line.Unit.Length > 0 ? line.Unit : "piece",
                        line.Packs,
                        line.PackSize,
                        line.EachLength > 0 ? CsvText.Millimetres(line.EachLength) : null,
                        line.EachLength > 0 ? CsvText.Inches(line.EachLength) : null,
                        line.Price,
                        line.Price is null ? null
                        : line.InventedPrice ? "yes"
                        : "no",
                        told.Of(line.Note),
                    ]
            )
        );
    }

    /// <summary>One line for each piece on its stock, in the order of sawing, and one for each leftover.</summary>
    /// <param name="plan">The plan.</param>
    public static byte[] Cuts(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var rows = new List<IReadOnlyList<object?>>();
        foreach (var cut in plan.Parts.Cuts)
        {
            for (var i = 0; i < cut.Stocks.Count; i++)
            {
                var stock = cut.Stocks[i];
                void Add(int place, string piece, double start, double length, string kind) =>
                    rows.Add([
                        cut.Material,
                        i + 1,
                        stock.OnHandLabel is { } number ? $"on hand {number}" : "buy",
                        CsvText.Millimetres(stock.Length),
                        CsvText.Inches(stock.Length),
                        place,
                        piece,
                        kind,
                        CsvText.Millimetres(start),
                        CsvText.Inches(start),
                        CsvText.Millimetres(length),
                        CsvText.Inches(length),
                    ]);
                for (var p = 0; p < stock.Pieces.Count; p++)
                {
                    Add(p + 1, stock.Pieces[p].Label, stock.Pieces[p].Start, stock.Pieces[p].Length, "piece");
                }

                if (stock.Leftover > 0)
                {
                    var kind = stock.LeftoverUsable ? "keep" : "waste";
                    Add(stock.Pieces.Count + 1, "", stock.Length - stock.Leftover, stock.Leftover, kind);
                }
            }
        }

        return CsvText.Write(
            [
                "material",
                "bar",
                "from",
                "bar_length_mm",
                "bar_length_in",
                "order",
                "piece",
                "kind",
                "start_mm",
                "start_in",
                "length_mm",
                "length_in",
            ],
            rows
        );
    }

    /// <summary>One line for each hole in a pipe.</summary>
    /// <param name="plan">The plan.</param>
    public static byte[] Holes(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var told = new PlanWords(plan.Rig.Units);
        return CsvText.Write(
            [
                "row",
                "run",
                "piece",
                "hole",
                "pot",
                "from_left_end_mm",
                "from_left_end_in",
                "from_mark_before_mm",
                "from_mark_before_in",
                "diameter_mm",
                "diameter_in",
                "tool",
                "face",
            ],
            plan.Parts.Holes.Select(hole =>
                (IReadOnlyList<object?>)
                    [
                        hole.Row,
                        hole.Run,
                        hole.Piece,
                        hole.Number,
                        hole.Pot,
                        CsvText.Millimetres(hole.FromEnd),
                        CsvText.Inches(hole.FromEnd),
                        CsvText.Millimetres(hole.Step),
                        CsvText.Inches(hole.Step),
                        CsvText.Millimetres(hole.Diameter),
                        CsvText.Inches(hole.Diameter),
                        told.Of(hole.Tool),
                        BenchWords.FaceOf(hole.Face),
                    ]
            )
        );
    }
}
