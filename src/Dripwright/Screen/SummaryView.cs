using System.Globalization;
using Dripwright.Engine.Findings;
using Dripwright.Language;
using Dripwright.Language.Report;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>The summary of a plan on a screen or in a text file.</summary>
internal static class SummaryView
{
    private const int NameWidth = 23;
    private const int ValueWidth = 14;

    private static readonly Style s_heading = new(decoration: Decoration.Bold);

    public static void Draw(IAnsiConsole console, PlanSummary summary)
    {
        console.Write(new Text(Plain.Line(summary.Title) + "\n", s_heading));
        console.Write(new Text(Plain.Line(summary.Sentence) + "\n"));
        foreach (var group in summary.Groups)
        {
            Heading(console, group.Heading);
            var grid = Columns(NameWidth, ValueWidth);
            foreach (var figure in group.Figures)
            {
                if (figure.Value.Length > ValueWidth && figure.Remark.Length == 0)
                {
                    // A sentence in the value's place gets the whole width.
                    console.Write(grid);
                    grid = Columns(NameWidth, ValueWidth);
                    var wide = Columns(NameWidth);
                    wide.AddRow(Cell(figure.Name), Cell(figure.Value));
                    console.Write(wide);
                    continue;
                }

                grid.AddRow(Cell(figure.Name), Cell(figure.Value), Cell(figure.Remark));
            }

            console.Write(grid);
        }

        DrawFindings(console, summary.Findings);
        DrawAssumed(console, summary);
    }

    /// <summary>The findings alone, or a line that there are none.</summary>
    public static void DrawFindings(IAnsiConsole console, IReadOnlyList<ToldFinding> findings)
    {
        if (findings.Count == 0)
        {
            Heading(console, Words.Of("findings.title"));
            console.Write(new Text($"  {Words.Of("findings.none")}\n"));
            return;
        }

        foreach (var level in Enum.GetValues<FindingLevel>())
        {
            var here = findings.Where(finding => finding.Level == level).ToList();
            if (here.Count == 0)
            {
                continue;
            }

            var count = here.Count.ToString(CultureInfo.InvariantCulture);
            console.Write(new Text($"\n{Name(level)} ({count})\n", Look(level)));
            var grid = Columns(1);
            foreach (var finding in here)
            {
                grid.AddRow(new Text(Mark(level), Look(level)), Cell(Sentence(finding)));
            }

            console.Write(grid);
        }
    }

    private static string Sentence(ToldFinding finding)
    {
        var found =
            finding.Value.Length > 0 && !finding.What.Contains(finding.Value, StringComparison.Ordinal)
                ? " " + Words.Of("findings.found", finding.Value)
                : "";
        var limit =
            finding.Limit.Length > 0 ? $"{found} {Words.Of("findings.limit", finding.Limit, finding.Source)}" : found;
        return $"{finding.Place}: {finding.What}{limit} → {finding.Remedy}";
    }

    private static void DrawAssumed(IAnsiConsole console, PlanSummary summary)
    {
        var count = summary.Assumed.Count.ToString(CultureInfo.InvariantCulture);
        if (summary.Assumed.Count == 0)
        {
            Heading(console, Words.Of("program.assumed"));
            console.Write(new Text($"  {Words.Of("program.assumed.nothing")}\n"));
            return;
        }

        Heading(console, Words.Of("program.assumed.some", count));
        var grid = Columns(36, null);
        foreach (var assumed in summary.Assumed)
        {
            grid.AddRow(
                Cell(assumed.Path),
                Cell(assumed.Value.Length > 0 ? assumed.Value : Words.Or($"assumed.{assumed.How}", assumed.How))
            );
        }

        console.Write(grid);
    }

    private static void Heading(IAnsiConsole console, string text) => console.Write(new Text($"\n{text}\n", s_heading));

    private static Text Cell(string text) => new(Plain.Line(text));

    // Columns of the given widths; the last takes what is left.
    private static Grid Columns(params int?[] widths)
    {
        var grid = new Grid { Expand = false };
        for (var i = 0; i < widths.Length; i++)
        {
            grid.AddColumn(new GridColumn { Width = widths[i], Padding = new Padding(i == 0 ? 2 : 0, 0, 1, 0) });
        }

        if (widths[^1] is not null)
        {
            grid.AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
        }

        return grid;
    }

    private static string Name(FindingLevel level) =>
        level switch
        {
            FindingLevel.Stop => Words.Of("program.level.stop"),
            FindingLevel.Mend => Words.Of("program.level.mend"),
            _ => Words.Of("program.level.note"),
        };

    private static string Mark(FindingLevel level) =>
        level switch
        {
            FindingLevel.Stop => "✗",
            FindingLevel.Mend => "!",
            _ => "·",
        };

    private static Style Look(FindingLevel level) =>
        level switch
        {
            FindingLevel.Stop => new Style(Color.Red, decoration: Decoration.Bold),
            FindingLevel.Mend => new Style(Color.Yellow),
            _ => Style.Plain,
        };
}
