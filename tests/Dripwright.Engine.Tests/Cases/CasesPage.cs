using System.Globalization;
using System.Text;

namespace Dripwright.Engine.Tests.Cases;

/// <summary>The cases as a page that a grower can read.</summary>
internal static class CasesPage
{
    private static readonly CompositeFormat s_count = CompositeFormat.Parse("| {0} | {1} | {2} | {3} | {4} |\n");

    public static string Text(IReadOnlyList<(string File, GrowerCase Case)> cases)
    {
        var text = new StringBuilder(
            """
            # What an experienced grower would say

            Short cases: a rig, what an experienced grower, builder or adviser would say of it in one sentence, whose judgement that is,
            and whether the plan says so today. A case counts only when the plan says it at the right grade, points at the field that
            cures it, and the cure, planned anew, takes the finding away and brings no new stop. A sound rig counts when the plan has
            nothing to stop or mend, or nothing to say by the rules that the case names. The rigs and their cures are in `tests/Dripwright.Engine.Tests/Cases`; a test plans every one of
            them, and makes this page.


            """.ReplaceLineEndings("\n")
        );
        text.Append("| area | cases | sound rigs | right today | not yet |\n| --- | --- | --- | --- | --- |\n");
        foreach (var (file, title) in CaseBook.Areas)
        {
            Count(text, title, [.. cases.Where(c => c.File == file).Select(c => c.Case)]);
        }

        Count(text, "all", [.. cases.Select(c => c.Case)]);
        foreach (var (file, title) in CaseBook.Areas)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
            text.Append("| case | a grower would say | whose judgement | expected | today |\n");
            text.Append("| --- | --- | --- | --- | --- |\n");
            foreach (var c in cases.Where(c => c.File == file).Select(c => c.Case))
            {
                var today = c.Now == Now.Right ? "yes" : "not yet";
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {c.Name} | {c.Says} | {c.Source} | {Expectation(c)} | {today} |\n"
                );
            }
        }

        return text.ToString();
    }

    private static void Count(StringBuilder text, string title, IReadOnlyList<GrowerCase> cases) =>
        text.AppendFormat(
            CultureInfo.InvariantCulture,
            s_count,
            title,
            cases.Count,
            cases.Count(c => c.Expect == Expected.Silent),
            cases.Count(c => c.Now == Now.Right),
            cases.Count(c => c.Now == Now.Wrong)
        );

    private static string Expectation(GrowerCase c) =>
        c.Expect switch
        {
            Expected.Silent when c.Rules.Count == 0 => "no stop, no mend",
            Expected.Silent => "silent: " + string.Join(", ", c.Rules.Select(r => $"`{r}`")),
            Expected.Figure => Bounds(c.Figure!),
            _ => c.Expect.ToString().ToLowerInvariant() + ": " + (c.Rule is { } rule ? $"`{rule}`" : c.Missing),
        };

    private static string Bounds(FigureBounds bounds)
    {
        var least = bounds.Least.ToString("0.##", CultureInfo.InvariantCulture);
        var most = bounds.Most?.ToString("0.##", CultureInfo.InvariantCulture);
        return Figure(bounds.Of) + (most is null ? $" at least {least}" : $" {least} to {most}");
    }

    // "litresAfterMending" is "litres after mending".
    private static string Figure(string name) =>
        string.Concat(name.Select(c => char.IsAsciiLetterUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"))
            .Replace("ph at", "pH at", StringComparison.Ordinal);
}
