using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>One finding in full: mark, word, place, what, value against limit, what to do.</summary>
internal sealed class FindingBlock
{
    private const double Indent = 11;
    private const double Gap = 2.5;
    private static readonly TextStyle Style = TextStyle.Note with { Size = 3.5 };
    private readonly Grade grade;
    private readonly string number;
    private readonly IReadOnlyList<(string Text, TextStyle Style)> lines;
    private readonly ToldFinding finding;

    /// <summary>The block of a finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="width">[mm] Width of the block.</param>
    public FindingBlock(ToldFinding finding, int number, double width)
    {
        this.finding = finding;
        this.number = Wording.Count(number);
        grade = FindingMarks.GradeOf(finding.Level);
        var room = width - Indent;
        lines =
        [
            .. Wrapped(Words.Of("sheet.finding.head", Mark.Word(grade), this.number, finding.Place), Style.Bold),
            .. Wrapped(finding.What, Style),
            .. Wrapped(Against(finding), Style with { Role = Role.Explain }),
            .. Wrapped(finding.Remedy, Style),
        ];

        IEnumerable<(string, TextStyle)> Wrapped(string text, TextStyle style) =>
            text.Length == 0 ? [] : TextMeasure.Wrap(Wording.Sentence(text), room, style).Select(line => (line, style));
    }

    /// <summary>[mm] Height.</summary>
    public double Height => Math.Max(lines.Count * Style.LineHeight, 8) + Gap;

    /// <summary>The block in its place.</summary>
    public Group Draw(Box box) =>
        new([
            Mark.Finding(new(box.X + 4, box.Y + 4.5), grade, number),
            .. lines.Select(
                (line, i) =>
                    new Text(
                        line.Text,
                        new(box.X + Indent, box.Y + (Style.Size * 0.95) + (i * Style.LineHeight)),
                        line.Style
                    )
            ),
        ])
        {
            Id = "finding-" + number,
            Class = "finding-text " + grade.ToString().ToLowerInvariant(),
            Title = Words.Of("sheet.finding.title", Mark.Word(grade), number),
            Description = finding.What,
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
