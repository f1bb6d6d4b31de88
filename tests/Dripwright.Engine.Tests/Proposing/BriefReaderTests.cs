using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Proposing;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Proposing;

public sealed class BriefReaderTests
{
    private const string Page = "docs/handbook/propose.md";
    private const string Begin = "<!-- fields: begin -->\n";
    private const string End = "<!-- fields: end -->";

    private static string Text => File.ReadAllText(Path.Combine(CommittedText.Root, Page));

    /// <summary>Any brief that reads: from one plant in a cupboard to a hall.</summary>
    private static readonly Gen<string> s_briefs = Gen.Select(
            Gen.OneOf<string>("us", "metric"),
            Gen.Int[1, 120],
            Gen.Int[3, 60],
            Gen.Int[3, 60],
            Gen.Int[1, 5],
            Gen.OneOf<string>(
                "",
                "\"tankShelf\": \"7 ft\", ",
                "\"budget\": 400, ",
                "\"leastEmitters\": 1, ",
                "\"daysWanted\": \"0 d\", "
            )
        )
        .Select(
            (units, plants, length, width, each, more) =>
                FormattableString.Invariant(
                    $"{{ \"units\": \"{units}\", {more}\"plantsPerPot\": {each}, \"site\": {{ \"roomLength\": \"{length} ft\", \"roomWidth\": \"{width} ft\" }}, \"crops\": [{{ \"plants\": {plants} }}] }}"
                )
        );

    [Fact]
    public void A_brief_is_read_back_as_it_was_written() =>
        s_briefs.Holds(text =>
        {
            var written = BriefReader.Write(Briefs.From(text));
            Assert.Equal(written, BriefReader.Write(Briefs.From(written)));
        });

    [Fact]
    public void No_brief_hangs_or_fails_and_each_gets_rigs_or_reasons() =>
        s_briefs.Holds(
            text =>
            {
                var answer = Proposer.Of(
                    Briefs.From(text),
                    PartsCatalogue.Default,
                    new() { MostPlans = 4, MostPlacings = 12 },
                    null,
                    TestContext.Current.CancellationToken
                );
                Assert.True(answer.Proposals.Count > 0 || answer.Obstacles.Count > 0);
                Assert.True(answer.Search.Planned <= 4 && answer.Search.Placed <= 12);
                Assert.All(answer.Proposals, p => Assert.True(Briefs.Passes(p.Plan)));
            },
            iter: 25
        );

    [Theory]
    [InlineData("", "the end of the file")]
    [InlineData("[]", "a brief")]
    [InlineData("""{ "crop": [] }""", "crops")]
    [InlineData("""{ "crops": [{ "plants": 12000 }] }""", "at most 600 pots")]
    [InlineData("""{ "crops": [{ "plants": 0 }] }""", "a whole number from 1")]
    [InlineData("""{ "onHand": [{ "part": "hose-1/2" }] }""", "the length of each piece")]
    [InlineData("""{ "site": { "roomLength": "2000 ft" } }""", "1000 ft")]
    public void Faults_are_told_with_what_is_expected(string text, string words)
    {
        var reading = BriefReader.Read(text, "brief.json", PartsCatalogue.Default);
        Assert.Null(reading.Brief);
        Assert.Contains(reading.Faults, f => f.Told().ToString().Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void The_handbooks_tables_of_the_brief_are_the_programs()
    {
        var before = Text[..(Text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length)];
        var after = Text[Text.IndexOf(End, StringComparison.Ordinal)..];
        CommittedText.Is(Page, $"{before}\n{FieldTables.Write(typeof(Brief), "The brief")}{after}");
    }

    [Fact]
    public void The_handbooks_example_of_a_brief_reads_without_a_fault()
    {
        var start = Text.IndexOf("```json\n", StringComparison.Ordinal) + "```json\n".Length;
        Briefs.From(Text[start..Text.IndexOf("```", start, StringComparison.Ordinal)]);
    }
}
