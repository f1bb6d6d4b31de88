using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>One finding in full: mark, word, place, what, value against limit, what to do.</summary>
internal sealed class FindingBlock
{
    private const double Indent = 11;
    private const double Gap = 2.5;
    private static readonly TextStyle s_style = TextStyle.Note with { Size = 3.5 };
    private readonly Grade _grade;
    private readonly string _number;
    private readonly IReadOnlyList<(string Text, TextStyle Style)> _lines;
    private readonly ToldFinding _finding;

    /// <summary>The block of a finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="width">[mm] Width of the block.</param>
    public FindingBlock(ToldFinding finding, int number, double width)
    {
        this._finding = finding;
        this._number = Wording.Count(number);
        _grade = FindingMarks.GradeOf(finding.Level);
        var room = width - Indent;
        _lines =
        [
            .. Wrapped(Words.Of("sheet.finding.head", Mark.Word(_grade), this._number, finding.Place), s_style.Bold),
            .. Wrapped(finding.What, s_style),
            .. Wrapped(Against(finding), s_style with { Role = DrawnRole.Explain }),
            .. Wrapped(finding.Remedy, s_style),
        ];

        IEnumerable<(string, TextStyle)> Wrapped(string text, TextStyle style) =>
            text.Length == 0 ? [] : TextMeasure.Wrap(Wording.Sentence(text), room, style).Select(line => (line, style));
    }

    /// <summary>[mm] Height.</summary>
    public double Height => Math.Max(_lines.Count * s_style.LineHeight, 8) + Gap;

    /// <summary>The block in its place.</summary>
    public Group Draw(Box box) =>
        new([
            Mark.Finding(new(box.X + 4, box.Y + 4.5), _grade, _number),
            .. _lines.Select(
                (line, i) =>
                    new Text(
                        line.Text,
                        new(box.X + Indent, box.Y + (s_style.Size * 0.95) + (i * s_style.LineHeight)),
                        line.Style
                    )
            ),
        ])
        {
            Id = "finding-" + _number,
            Class = "finding-text " + _grade.ToString().ToLowerInvariant(),
            Title = Words.Of("sheet.finding.title", Mark.Word(_grade), _number),
            Description = _finding.What,
        };

    // Some limits are words such as "none": they say nothing beside a value.
    private static string Against(ToldFinding finding) =>
        (finding.Value.Length > 0, finding.Limit.Any(char.IsDigit)) switch
        {
            (false, false) => "",
            (false, true) => Words.Of("sheet.finding.limit", finding.Limit),
            (true, false) => "",
            (true, true) => Words.Of("sheet.finding.value", finding.Value, finding.Limit),
        };
}
