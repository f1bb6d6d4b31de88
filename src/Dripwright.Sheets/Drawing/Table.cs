using Dripwright.Language;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// A table: header on each sheet, breaks between rows, columns as wide as their contents need, numbers on the decimal
/// point, tick boxes for a pencil.
/// </summary>
/// <param name="columns">At least one column.</param>
public sealed class Table(params IReadOnlyList<Column> columns)
{
    private const double Padding = 1.5;
    private const double RowSpace = 2.2;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 3.4 };

    /// <summary>Rows that stay together at a table's start and end.</summary>
    private const int Together = 3;

    // A row taller than this goes on in a second piece, so that no cell can outgrow a sheet.
    private const int MostLines = 30;
    private readonly List<(string? Heading, IReadOnlyList<string> Cells)> _rows = [];

    /// <summary>A row; missing cells stay empty.</summary>
    /// <exception cref="ArgumentException">There are more cells than columns.</exception>
    public Table Row(params IReadOnlyList<string> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        if (cells.Count > columns.Count)
        {
            throw new ArgumentException("There are more cells than columns.", nameof(cells));
        }

        _rows.Add((null, [.. cells, .. Enumerable.Repeat("", columns.Count - cells.Count)]));
        return this;
    }

    /// <summary>A heading over the rows that follow.</summary>
    public Table Group(string heading)
    {
        _rows.Add((heading, []));
        return this;
    }

    /// <summary>[mm] Height of the whole table in one piece.</summary>
    /// <param name="width">[mm] Width of the table.</param>
    public double Height(double width) => Blocks(width).Sum(block => block.Height);

    /// <summary>The whole table in one piece, for a corner of a drawing.</summary>
    /// <param name="topLeft">Its corner.</param>
    /// <param name="width">[mm] Width of the table.</param>
    public Group Draw(Point topLeft, double width)
    {
        var elements = new List<Element>();
        foreach (var block in Blocks(width))
        {
            elements.AddRange(block.Draw(topLeft));
            topLeft = topLeft.Move(0, block.Height);
        }

        return new(elements) { Class = "table" };
    }

    /// <summary>The table as pieces of a flow: never fewer than three rows stand alone at its start or its end.</summary>
    /// <param name="width">[mm] Width of the table, above 0.</param>
    /// <exception cref="ArgumentException">There are no columns.</exception>
    public IReadOnlyList<Block> Blocks(double width)
    {
        if (columns.Count == 0)
        {
            throw new ArgumentException("A table needs at least one column.", nameof(width));
        }

        var widths = TableWidths.Of(
            columns,
            [.. _rows.Where(r => r.Heading is null).Select(r => r.Cells)],
            width,
            s_style
        );
        var header = Header(widths);
        var blocks = new List<Block> { header with { KeepWithNext = true, Header = header } };
        if (_rows.Count == 0)
        {
            blocks.Add(Line([Words.Of("sheet.table.empty")], width, s_style, header));
        }

        foreach (var (heading, cells) in _rows)
        {
            if (heading is not null)
            {
                var lines = TextMeasure.Wrap(heading, width - (2 * Padding), s_style.Bold);
                blocks.Add(Line(lines, width, s_style.Bold, header) with { KeepWithNext = true });
                continue;
            }

            blocks.AddRange(Row(cells, widths, header));
        }

        // The header is the first block.
        for (var i = 1; i < blocks.Count - 1; i++)
        {
            if (i < Together || i > blocks.Count - 1 - Together)
            {
                blocks[i] = blocks[i] with { KeepWithNext = true };
            }
        }

        return blocks;
    }

    private Block Header(TableWidths widths)
    {
        var style = widths.HeaderStyle;
        var lines = columns.Select((c, i) => TextMeasure.Wrap(c.Header, widths.Inner(i), style)).ToList();
        var height = (lines.Max(l => l.Count) * style.LineHeight) + RowSpace;
        return new(
            height,
            at =>
                [
                    .. columns.SelectMany(
                        (column, i) =>
                            // Headings of numbers stand over the numbers, on the last line of the header.
                            Cell(
                                lines[i],
                                column.Align is Align.Left ? Align.Left : Align.Middle,
                                at.Move(widths.Left(i), height - RowSpace - (lines[i].Count * style.LineHeight)),
                                widths.Width(i),
                                style
                            )
                    ),
                    new Line(at.Move(0, height - 0.6), at.Move(widths.Total, height - 0.6), Pen.Built),
                ]
        );
    }

    private IEnumerable<Block> Row(IReadOnlyList<string> cells, TableWidths widths, Block header)
    {
        var lines = columns
            .Select(
                (c, i) =>
                    c.Align is Align.Tick || widths.IsAligned(i)
                        ? [cells[i]]
                        : TextMeasure.Wrap(cells[i], widths.Inner(i), widths.Style)
            )
            .ToList();
        var count = lines.Max(l => l.Count);
        for (var start = 0; start < count; start += MostLines)
        {
            var (from, last) = (start, start + MostLines >= count);
            var piece = lines.Select(l => l.Skip(from).Take(MostLines).ToList()).ToList();
            var tall = piece.Max(l => l.Count) * widths.Style.LineHeight;
            var height = Math.Max(tall, columns.Any(c => c.Align == Align.Tick) ? 5 : 0) + RowSpace;
            yield return new(
                height,
                at =>
                    [
                        .. columns.SelectMany((_, i) => Cell(i, piece[i], at.Move(0, RowSpace / 2 - 0.3), widths)),
                        .. last
                            ? new Element[]
                            {
                                new Line(at.Move(0, height - 0.3), at.Move(widths.Total, height - 0.3), Pen.Faint),
                            }
                            : [],
                    ]
            )
            {
                Header = header,
            };
        }
    }

    private IEnumerable<Element> Cell(int i, List<string> lines, Point at, TableWidths widths)
    {
        var corner = at.Move(widths.Left(i), 0);
        if (columns[i].Align == Align.Tick)
        {
            return lines.Count == 0 ? [] : [Mark.TickBox(corner.Move((widths.Width(i) - 4) / 2, 0.4))];
        }

        if (widths.IsAligned(i))
        {
            var point = corner.Move(Padding + widths.Point(i), widths.Style.Size * 0.95);
            return lines.SelectMany(line => NumberCell.Of(line).Draw(point, widths.Style));
        }

        return Cell(lines, columns[i].Align, corner, widths.Width(i), widths.Style);
    }

    private static IEnumerable<Element> Cell(
        IReadOnlyList<string> lines,
        Align align,
        Point corner,
        double width,
        TextStyle style
    )
    {
        var (x, anchor) = align switch
        {
            Align.Middle => (width / 2, Anchor.Middle),
            Align.Right => (width - Padding, Anchor.End),
            _ => (Padding, Anchor.Start),
        };
        return lines.Select(
            (line, n) =>
                new Text(
                    line,
                    corner.Move(x, (style.Size * 0.95) + (n * style.LineHeight)),
                    style with
                    {
                        Anchor = anchor,
                    }
                )
        );
    }

    private static Block Line(IReadOnlyList<string> lines, double width, TextStyle style, Block header)
    {
        var height = (lines.Count * style.LineHeight) + RowSpace + 1;
        return new(
            height,
            at =>
                [
                    .. Cell(lines, Align.Left, at.Move(0, RowSpace / 2 + 0.5), width, style),
                    new Line(at.Move(0, height - 0.3), at.Move(width, height - 0.3), Pen.Thin),
                ]
        )
        {
            Header = header,
        };
    }
}
