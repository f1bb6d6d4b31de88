using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigHandbookTests
{
    private const string Page = "docs/handbook/rig-file.md";
    private const string Begin = "<!-- fields: begin -->\n";
    private const string End = "<!-- fields: end -->";

    private static string Text => CommittedText.Of(Page);

    [Fact]
    public void The_handbooks_tables_of_fields_are_the_programs()
    {
        CommittedText.Holds(Page, Begin, End, "\n" + FieldTables.Write(typeof(Rig), "The rig"));
    }

    [Fact]
    public void The_handbooks_example_reads_without_a_fault()
    {
        var example = Regex
            .Match(
                Text,
                "```json\n(?<json>.*?)```",
                RegexOptions.Singleline | RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(9)
            )
            .Groups["json"]
            .Value;
        Assert.Empty(
            RigReader.Read(example, Page, PartsCatalogue.Default).Faults.Told().Select(fault => fault.ToString())
        );
    }
}
