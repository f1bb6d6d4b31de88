using System.Globalization;
using System.Text;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Tests.Findings;

public sealed class FindingsPageTests
{
    private const string Start = "<!-- rules: made from the rule book, do not edit by hand -->\n";
    private const string End = "<!-- end of rules -->\n";

    [Fact]
    public void The_handbook_lists_every_rule_as_the_rule_book_has_it()
    {
        CommittedText.Holds("docs/handbook/findings.md", Start, End, Table());
    }

    private static string Table()
    {
        var text = new StringBuilder();
        foreach (var level in RuleBook.Rules.Values.GroupBy(rule => rule.Level).OrderBy(group => group.Key))
        {
            var heading = level.Key switch
            {
                FindingLevel.Stop => "Stop: it will fail or hurt",
                FindingLevel.Mend => "Mend: it works badly",
                _ => "Note: good to know",
            };
            text.Append(CultureInfo.InvariantCulture, $"\n## {heading}\n\n");
            text.Append("| finding | level | limit | whose rule |\n| --- | --- | --- | --- |\n");
            foreach (var rule in level)
            {
                var limit = rule.Limit is { } value ? value.ToString("0.######", CultureInfo.InvariantCulture) : "none";
                var name = rule.Level.ToString().ToLowerInvariant();
                text.Append(CultureInfo.InvariantCulture, $"| `{rule.Key}` | {name} | {limit} | {rule.Source} |\n");
            }
        }

        return text.Append('\n').ToString();
    }
}
