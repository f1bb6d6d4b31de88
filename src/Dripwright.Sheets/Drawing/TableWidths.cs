using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Widths of a table's columns: what their contents need, then shrunk or stretched to the whole width.</summary>
internal sealed class TableWidths
{
    private const double Padding = 1.5;

    // [mm] Capitals of 1.5 mm.
    private const double Smallest = 2.3;

    private readonly double[] _widths;
    private readonly double[] _points;
    private readonly bool[] _aligned;

    private TableWidths(double[] widths, double[] points, bool[] aligned, TextStyle style) =>
        (this._widths, this._points, this._aligned, Style) = (widths, points, aligned, style);

    /// <summary>Size of the letters in cells.</summary>
    public TextStyle Style { get; }

    /// <summary>Size of the letters in the header.</summary>
    public TextStyle HeaderStyle => HeaderOf(Style);

    public double Total => _widths.Sum();

    public double Width(int i) => _widths[i];

    public double Inner(int i) => _widths[i] - (2 * Padding);

    public double Left(int i) => _widths.Take(i).Sum();

    /// <summary>Whether the column's numbers have room to stand on their decimal point.</summary>
    public bool IsAligned(int i) => _aligned[i];

    /// <summary>[mm] From the padding to the decimal point.</summary>
    public double Point(int i) => _points[i];

    /// <summary>Columns for a width; letters are set smaller, down to a least size, before a word is broken.</summary>
    public static TableWidths Of(
        IReadOnlyList<Column> columns,
        IReadOnlyList<IReadOnlyList<string>> rows,
        double total,
        TextStyle style
    )
    {
        while (true)
        {
            var (natural, least, points) = Wanted(columns, rows, total, style);
            if (least.Sum() <= total || style.Size <= Smallest)
            {
                return Placed(columns, rows, total, style, natural, least, points);
            }

            style = style with { Size = style.Size - 0.1 };
        }
    }

    private static TextStyle HeaderOf(TextStyle style) => style.Bold with { Size = Math.Min(3, style.Size) };

    private static (double[] Natural, double[] Least, double[] Points) Wanted(
        IReadOnlyList<Column> columns,
        IReadOnlyList<IReadOnlyList<string>> rows,
        double total,
        TextStyle style
    )
    {
        var (natural, least, points) = (
            new double[columns.Count],
            new double[columns.Count],
            new double[columns.Count]
        );
        for (var i = 0; i < columns.Count; i++)
        {
            var cells = columns[i].Align == Align.Tick ? [] : rows.Select(row => row[i]).ToList();
            var header = Word(columns[i].Header, HeaderOf(style));
            var (want, need) = (
                cells.Select(c => Widest(c, style)).DefaultIfEmpty().Max(),
                cells.Select(c => Word(c, style)).DefaultIfEmpty().Max()
            );
            if (columns[i].Align == Align.Decimal)
            {
                var numbers = cells.Select(NumberCell.Of).ToList();
                points[i] = numbers.Select(n => n.Before(style)).DefaultIfEmpty().Max();
                want = points[i] + numbers.Select(n => n.After(style)).DefaultIfEmpty().Max();
                need = want;
            }

            // A number with its unit is never broken; a word that takes too much of the table is.
            var most = columns[i].Align == Align.Left ? 0.3 : 0.5;
            var floor = columns[i].Align == Align.Tick ? 5 : 3;
            natural[i] = Math.Max(Math.Max(want, header), floor) + (2 * Padding);
            least[i] = Math.Max(Math.Max(Math.Min(need, total * most), header), floor) + (2 * Padding);
        }

        return (natural, least, points);
    }

    private static TableWidths Placed(
        IReadOnlyList<Column> columns,
        IReadOnlyList<IReadOnlyList<string>> rows,
        double total,
        TextStyle style,
        double[] natural,
        double[] least,
        double[] points
    )
    {
        var fitted = Fit(columns, natural, least, total);
        var onPoint = columns.Select((c, i) => c.Align == Align.Decimal && fitted[i] >= natural[i] - 1e-6).ToArray();
        for (var i = 0; i < fitted.Length; i++)
        {
            // Numbers stand in the middle of a column that is wider than they are.
            var cells = onPoint[i] ? rows.Select(row => NumberCell.Of(row[i])).ToList() : [];
            var used = points[i] + cells.Select(n => n.After(style)).DefaultIfEmpty().Max();
            points[i] += Math.Max(0, (fitted[i] - (2 * Padding) - used) / 2);
        }

        return new(fitted, points, onPoint, style);
    }

    private static double[] Fit(IReadOnlyList<Column> columns, double[] natural, double[] least, double total)
    {
        var (want, need) = (natural.Sum(), least.Sum());
        if (need > total)
        {
            return [.. least.Select(width => width * total / need)];
        }

        if (want > total)
        {
            var share = (total - need) / (want - need);
            return [.. natural.Select((width, i) => least[i] + ((width - least[i]) * share))];
        }

        // Text columns take what is left, so that the right edge of the table is the right edge of the sheet.
        var texts = columns.Select(c => c.Align == Align.Left).ToArray();
        var stretch = texts.Contains(value: true) ? texts : [.. texts.Select(_ => true)];
        var sum = natural.Where((_, i) => stretch[i]).Sum();
        return [.. natural.Select((width, i) => stretch[i] ? width + ((total - want) * width / sum) : width)];
    }

    private static double Widest(string text, TextStyle style) =>
        text.Split('\n').Max(line => TextMeasure.Width(line, style));

    private static double Word(string text, TextStyle style) =>
        text.Split(' ', '\n').Max(word => TextMeasure.Width(word, style));
}
