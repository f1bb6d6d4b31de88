using System.Text.Json;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Json.Schema;

namespace Dripwright.Engine.Tests.Proposing;

public sealed class BriefSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(BriefSchema.Write(PartsCatalogue.Default));

    [Fact]
    public void The_schema_under_docs_is_the_one_the_program_writes() =>
        CommittedText.Is("docs/brief.schema.json", BriefSchema.Write(PartsCatalogue.Default));

    [Fact]
    public void A_brief_as_the_program_writes_it_agrees_with_the_schema() =>
        Assert.True(Agrees(BriefReader.Write(Briefs.From("""{ "crops": [{ "plants": 9 }], "budget": 300 }"""))));

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "crops": [] }""")]
    [InlineData("""{ "crops": [{ "plants": 2.5 }] }""")]
    [InlineData("""{ "crops": [{ "plants": 2.0 }] }""")]
    [InlineData("""{ "crop": [] }""")]
    [InlineData("""{ "budget": "400" }""")]
    [InlineData("""{ "aisle": 30 }""")]
    [InlineData("""{ "aisle": "0,75 m" }""")]
    [InlineData("""{ "aisle": "1,000 mm" }""")]
    [InlineData("""{ "onHand": [{ "count": 2 }] }""")]
    [InlineData("""{ "units": "metrical" }""")]
    public void Schema_and_reader_agree(string text) =>
        Assert.Equal(BriefReader.Read(text, "x", PartsCatalogue.Default).Brief is not null, Agrees(text));

    private static bool Agrees(string text)
    {
        using var document = JsonDocument.Parse(text);
        return s_schema.Evaluate(document.RootElement).IsValid;
    }
}
