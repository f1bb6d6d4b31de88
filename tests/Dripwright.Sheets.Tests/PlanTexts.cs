using System.Text.Json;
using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Language.Report;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Tests.Views;

namespace Dripwright.Sheets.Tests;

/// <summary>Everything that a plan says to a reader: on its sheets, in its summary and in plan.json.</summary>
internal static class PlanTexts
{
    // Texts of plan.json that are data: codes of points, runs and elements, texts for a rig file, and what the grower wrote.
    private static readonly HashSet<string> s_data = new(StringComparer.Ordinal)
    {
        "from",
        "to",
        "run",
        "element",
        "assumed",
        "crop",
    };

    // Lines of a paragraph follow one another, so that a name broken over two lines is whole again.
    public static IEnumerable<string> OfSheet(Sheet sheet) =>
        [
            string.Join(' ', SheetText.Of(sheet).Select(text => text.Text.Content)),
            sheet.Title,
            sheet.Description ?? "",
            .. DemoRigs
                .Groups(sheet.Elements)
                .SelectMany(group => new[] { group.Title ?? "", group.Description ?? "" }),
        ];

    public static IEnumerable<string> OfSummary(Plan plan)
    {
        var summary = PlanSummary.Of(plan);
        return
        [
            summary.Sentence,
            .. summary.Groups.Select(group => group.Heading),
            .. summary
                .Groups.SelectMany(group => group.Figures)
                .SelectMany(figure => new[] { figure.Name, figure.Value, figure.Remark }),
            .. summary.Findings.SelectMany(told =>
                new[] { told.Place, told.What, told.Value, told.Limit, told.Remedy }
            ),
        ];
    }

    public static IEnumerable<string> OfJson(Plan plan)
    {
        using var json = JsonDocument.Parse(PlanJson.Write(plan));
        return [.. Strings(json.RootElement).Where(text => !IsCode(text))];
    }

    /// <summary>A word with the words beside it.</summary>
    public static string Around(string word, string text)
    {
        var at = Regex.Match(text, $@"\b{Regex.Escape(word)}\b", RegexOptions.None, TimeSpan.FromSeconds(5)).Index;
        return text[Math.Max(0, at - 60)..Math.Min(text.Length, at + 60)];
    }

    // Codes are one word: "row-end", "PVC40-1/2", "stand.moduleLength"; a text for a reader has a blank.
    private static bool IsCode(string text) => !text.Contains(' ', StringComparison.Ordinal);

    private static IEnumerable<string> Strings(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.String => [element.GetString()!],
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
            JsonValueKind.Object => element
                .EnumerateObject()
                .Where(property => !s_data.Contains(property.Name))
                .SelectMany(property => Strings(property.Value)),
            _ => [],
        };
}
