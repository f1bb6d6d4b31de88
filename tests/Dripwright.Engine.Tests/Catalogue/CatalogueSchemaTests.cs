using System.Text.Json;
using Dripwright.Engine.Catalogue;
using Json.Schema;

namespace Dripwright.Engine.Tests.Catalogue;

public sealed class CatalogueSchemaTests
{
    [Fact]
    public void The_schema_under_docs_is_the_one_the_program_writes() =>
        CommittedText.Is("docs/catalogue.schema.json", CatalogueSchema.Write(PartsCatalogue.Default));

    [Fact]
    public void Our_own_rows_agree_with_the_schema()
    {
        foreach (var group in CatalogueData.Groups)
        {
            using var rows = JsonDocument.Parse(CatalogueData.Bytes(group));
            Assert.True(Agrees(rows.RootElement), group);
        }
    }

    // Where reader and schema can judge alike: names, kinds of value, bounds of numbers, choices.
    [Theory]
    [InlineData("""{}""")]
    [InlineData("""{ "format": 1, "pumps": [{ "key": "a", "basedOn": "pump-400gph", "power": "30 W" }] }""")]
    [InlineData("""{ "format": 2 }""")]
    [InlineData("""{ "pumpz": [] }""")]
    [InlineData("""{ "pumps": {} }""")]
    [InlineData("""{ "pumps": [{ "name": "no key" }] }""")]
    [InlineData("""{ "pumps": [{ "key": "pump-400gph", "powr": "30 W" }] }""")]
    [InlineData("""{ "pumps": [{ "key": "pump-400gph", "power": 30 }] }""")]
    [InlineData("""{ "pumps": [{ "key": "pump-400gph", "curve": [] }] }""")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "shape": "round" }] }""")]
    [InlineData("""{ "tubes": [{ "key": "emt-1", "shape": "Round" }] }""")]
    [InlineData("""{ "fittings": [{ "key": "pvc40-1-tee", "lossBranch": 1001 }] }""")]
    [InlineData("""{ "fittings": [{ "key": "pvc40-1-tee", "lossBranch": 1.5 }] }""")]
    [InlineData("""{ "sundries": [{ "key": "clamp-1/2", "pack": 0 }] }""")]
    [InlineData("""{ "tanks": [{ "key": "tank-box-20-gal", "lid": 1 }] }""")]
    public void Schema_and_reader_agree(string text)
    {
        using var document = JsonDocument.Parse(text);
        var reading = CatalogueReader.Read(System.Text.Encoding.UTF8.GetBytes(text), "x", PartsCatalogue.Default);
        Assert.Equal(reading.Catalogue is not null, Agrees(document.RootElement));
    }

    private static readonly JsonSchema s_schema = JsonSchema.FromText(CatalogueSchema.Write(PartsCatalogue.Default));

    private static bool Agrees(JsonElement element) => s_schema.Evaluate(element).IsValid;
}
