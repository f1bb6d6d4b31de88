using System.Globalization;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>
/// Text sheets from the top down: headings, paragraphs, numbered steps with tick boxes, cautions, forms, tables and
/// figures. Breaks over as many sheets as it takes; headings stay with what follows.
/// </summary>
/// <param name="paper">Size of the sheets.</param>
/// <param name="title">Title of the sheets.</param>
public sealed class Flow(Paper paper, string title)
{
    private const double Indent = 14;

    /// <summary>[mm] What a last sheet holds at least.</summary>
    private const double LeastTail = 40;

    /// <summary>[mm] What is moved to a last sheet at most for that.</summary>
    private const double MostTail = 120;

    private static readonly TextStyle s_style = TextStyle.Body;
    private readonly List<Block> _blocks = [];
    private int _step;

    /// <summary>[mm] Width of the text.</summary>
    public double Width => SheetSet.Room(paper).Width;

    /// <summary>A heading, on the same sheet as what follows.</summary>
    public Flow Heading(string text)
    {
        var style = TextStyle.Heading;
        Lines(text, style, 0, above: _blocks.Count == 0 ? 0 : 3, below: 1.5, keepAll: true);
        return this;
    }

    /// <summary>A paragraph.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="leads">Whether it leads to what follows and stands on the same sheet.</param>
    public Flow Paragraph(string text, bool leads = false)
    {
        Lines(text, s_style, 0, 0, 2, keepAll: leads);
        return this;
    }

    /// <summary>An item of a list.</summary>
    public Flow Bullet(string text)
    {
        Lines(text, s_style, 5, 0, 1, first: at => [new Circle(at.Move(2, 2.7), 0.6, null, Fill.Ink)]);
        return this;
    }

    /// <summary>A numbered step with a tick box. A caution stands with it, above what it warns of.</summary>
    /// <param name="text">What to do.</param>
    /// <param name="caution">What to beware of; null for nothing.</param>
    public Flow Step(string text, string? caution = null)
    {
        var number = (++_step).ToString(CultureInfo.InvariantCulture);
        IEnumerable<Element> Head(Point at) =>
            [
                Mark.TickBox(at.Move(0, 0.3)),
                new Text(number, at.Move(Indent - 2, s_style.Size * 0.95), s_style.Bold.End),
            ];
        if (caution is not null)
        {
            // The number stands beside the caution, so that nobody takes it for the end of the step before.
            Caution(caution, Indent, at => Head(at.Move(0, 2.3)));
        }

        Lines(text, s_style, Indent, caution is null ? 0.5 : 0, 2.5, first: caution is null ? Head : null);
        return this;
    }

    /// <summary>The next step is number one again.</summary>
    public Flow RestartSteps()
    {
        _step = 0;
        return this;
    }

    /// <summary>A caution over the whole width.</summary>
    public Flow Caution(string text)
    {
        Caution(text, 0);
        return this;
    }

    /// <summary>A label and a line to write on, with a unit at its end.</summary>
    /// <param name="label">What to write.</param>
    /// <param name="unit">In which unit; "" for none.</param>
    public Flow FormLine(string label, string unit = "")
    {
        const double height = 9;
        var lines = TextMeasure.Wrap(label, Width * 0.55, s_style);
        var tall = height + ((lines.Count - 1) * s_style.LineHeight);
        _blocks.Add(
            new(
                tall,
                at =>
                {
                    var start = Math.Max(Width * 0.3, lines.Max(line => TextMeasure.Width(line, s_style)) + 3);
                    var unitWidth = unit.Length == 0 ? 0 : TextMeasure.Width(unit, TextStyle.Note) + 2;
                    var foot = tall - 2;
                    return
                    [
                        .. Texts(lines, at.Move(0, height - 2 - (s_style.Size * 0.95)), s_style),
                        new Line(at.Move(start, foot), at.Move(Width - unitWidth, foot), Pen.Thin),
                        new Text(unit, at.Move(Width, foot), TextStyle.Note.End),
                    ];
                }
            )
        );
        return this;
    }

    /// <summary>Empty lines to write on.</summary>
    /// <param name="count">How many.</param>
    public Flow WritingLines(int count)
    {
        for (var i = 0; i < count; i++)
        {
            _blocks.Add(new(8, at => [new Line(at.Move(0, 7.5), at.Move(Width, 7.5), Pen.Faint)]));
        }

        return Space(3);
    }

    /// <summary>A table, with its header on each sheet.</summary>
    public Flow Table(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        _blocks.AddRange(table.Blocks(Width));
        return Space(3);
    }

    /// <summary>A drawing or plot over the whole width.</summary>
    /// <param name="height">[mm] Height.</param>
    /// <param name="draw">Draws it into the box.</param>
    public Flow Figure(double height, Func<Box, Element> draw)
    {
        _blocks.Add(new(height + 2, at => [draw(new(at.X, at.Y, Width, height))]));
        return this;
    }

    /// <summary>Empty space.</summary>
    /// <param name="height">[mm] Height.</param>
    public Flow Space(double height)
    {
        _blocks.Add(new(height, _ => []));
        return this;
    }

    /// <summary>What follows starts a new sheet.</summary>
    public Flow NewSheet()
    {
        _blocks.Add(new(0, _ => []) { StartsSheet = true });
        return this;
    }

    /// <summary>The sheets, at least one; the last never holds a few lines only.</summary>
    public IReadOnlyList<SheetDraft> Build() =>
        [.. Pagination.Paginate(Tailed(), SheetSet.Room(paper)).Select(page => new SheetDraft(paper, title, page))];

    private List<Block> Tailed()
    {
        List<Block> tailed = [.. _blocks];
        var tail = tailed.Count > 0 ? tailed[^1].Height : 0;
        for (var i = tailed.Count - 2; i >= 0 && tail < LeastTail && !tailed[i + 1].StartsSheet; i--)
        {
            tail += tailed[i].Height;
            var chain = tail;
            for (var k = i - 1; k >= 0 && tailed[k].KeepWithNext; k--)
            {
                chain += tailed[k].Height;
            }

            // What is too tall to move to the last sheet stays where it is.
            if (chain > MostTail)
            {
                break;
            }

            tailed[i] = tailed[i] with { KeepWithNext = true };
        }

        return tailed;
    }

    private void Caution(string text, double indent, Func<Point, IEnumerable<Element>>? head = null)
    {
        _blocks.Add(
            new(
                CautionBox.Height(text, Width - indent) + 2,
                at => [.. head is null ? [] : head(at), CautionBox.Draw(text, at.Move(indent, 0), Width - indent)]
            )
            {
                KeepWithNext = head is not null,
            }
        );
    }

    /// <summary>One block per line, so that long texts break; never one line alone on a sheet.</summary>
    private void Lines(
        string text,
        TextStyle style,
        double indent,
        double above,
        double below,
        bool keepAll = false,
        Func<Point, IEnumerable<Element>>? first = null
    )
    {
        var lines = TextMeasure.Wrap(Wording.Sentence(text), Width - indent, style);
        for (var i = 0; i < lines.Count; i++)
        {
            var (line, isFirst, isLast) = (lines[i], i == 0, i == lines.Count - 1);
            var top = isFirst ? above : 0;
            _blocks.Add(
                new(
                    top + style.LineHeight + (isLast ? below : 0),
                    at =>
                        [
                            .. isFirst && first is not null ? first(at.Move(0, top)) : [],
                            .. Texts([line], at.Move(indent, top), style),
                        ]
                )
                {
                    KeepWithNext = keepAll || (!isLast && (isFirst || i == lines.Count - 2)),
                }
            );
        }
    }

    private static IEnumerable<Text> Texts(IReadOnlyList<string> lines, Point at, TextStyle style) =>
        lines.Select((line, i) => new Text(line, at.Move(0, (style.Size * 0.95) + (i * style.LineHeight)), style));
}
