using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Json.Schema;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigSchemaTests
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(RigSchema.Write(PartsCatalogue.Default));

    private static readonly JsonDocumentOptions s_welcome = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
    };

    private static bool SchemaAccepts(string text)
    {
        using var document = JsonDocument.Parse(text, s_welcome);
        return s_schema.Evaluate(document.RootElement).IsValid;
    }

    private static bool ReaderAccepts(string text) =>
        RigReader.Read(text, "test", PartsCatalogue.Default).Rig is not null;

    [Fact]
    public void The_committed_schema_is_the_programs() =>
        CommittedText.Is("docs/rig.schema.json", RigSchema.Write(PartsCatalogue.Default));

    [Fact]
    public void Schema_and_reader_accept_every_valid_rig() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var text = RigWriter.Write(rig);
                return SchemaAccepts(text) && ReaderAccepts(text);
            },
            iter: 100
        );

    [Fact]
    public void Schema_and_reader_accept_a_starter_file()
    {
        var text = RigStarter.Text(new StarterAnswers(), PartsCatalogue.Default);
        Assert.True(SchemaAccepts(text) && ReaderAccepts(text));
    }

    /// <summary>Spoils one value of a rig, or leaves it good. All are faults of structure, on which both must agree.</summary>
    private static readonly Gen<JsonNode?> s_spoiled = Gen.OneOf<string>(
            "null",
            "7",
            "2.5",
            "2.0",
            "-1",
            "1e9",
            "true",
            "\"\"",
            "\"12\"",
            "\"12 quux\"",
            "\"12 in quux\"",
            "\"1,000 cm\"",
            "\"in 12\"",
            "\"no-such-choice\"",
            "\"a\\u0007b\"",
            "\"a\\nb\"",
            "[]",
            "[7]",
            "{}",
            "{ \"unknown\": 1 }"
        )
        .Select(text => JsonNode.Parse(text));

    [Fact]
    public void Schema_and_reader_agree_about_spoiled_rigs() =>
        Gen.Select(RigGen.Rigs, Gen.Int[0, 1_000_000], s_spoiled, Gen.Int[0, 3])
            .Holds(
                (rig, at, spoiled, way) =>
                {
                    var root = JsonNode.Parse(RigWriter.Write(rig))!;
                    var objects = Objects(root).ToList();
                    var chosen = objects[at % objects.Count];
                    var names = chosen.Select(pair => pair.Key).ToList();
                    if (way == 0 || names.Count == 0)
                    {
                        chosen["unknownField"] = spoiled;
                    }
                    else
                    {
                        chosen[names[at / 7 % names.Count]] = spoiled;
                    }
                    var text = root.ToJsonString();
                    var faults = RigReader.Read(text, "test", PartsCatalogue.Default).Faults.Told();
                    // The reader alone knows the catalogue, the bounds of quantities and the checks across fields.
                    var structural = faults.Any(fault => !IsReadersOwn(fault));
                    var accepts = SchemaAccepts(text);
                    Assert.True(accepts != structural, $"schema {accepts}\n{string.Join('\n', faults)}\n{text}");
                },
                iter: 400
            );

    private static IEnumerable<JsonObject> Objects(JsonNode node) =>
        node switch
        {
            JsonObject record => record
                .Select(pair => pair.Value)
                .OfType<JsonNode>()
                .SelectMany(Objects)
                .Prepend(record),
            JsonArray list => list.OfType<JsonNode>().SelectMany(Objects),
            _ => [],
        };

    private static bool IsReadersOwn(ToldFault fault)
    {
        var isText = fault.Found.StartsWith('"');
        return (isText && fault.Expected.Contains("of the catalogue", StringComparison.Ordinal))
            || fault.Expected.StartsWith("pots ", StringComparison.Ordinal)
            || fault.Expected.StartsWith("each pot", StringComparison.Ordinal)
            || fault.Expected.Contains("the length of each piece", StringComparison.Ordinal)
            || fault.Path is "pump.curve" && fault.Expected.StartsWith("two points", StringComparison.Ordinal)
            || fault.Path is "pump.curve" && fault.Expected.StartsWith("either", StringComparison.Ordinal)
            || fault.Expected.StartsWith("the head at no flow", StringComparison.Ordinal)
            || fault.Expected.StartsWith("the flow at no head", StringComparison.Ordinal)
            || fault.Expected.StartsWith("flow rising", StringComparison.Ordinal)
            || fault.Expected.EndsWith("needs both ends", StringComparison.Ordinal)
            || fault.Expected.EndsWith("is gravity feed", StringComparison.Ordinal)
            || fault.Expected.EndsWith("is round", StringComparison.Ordinal)
            || fault.Expected.StartsWith("less than the tank", StringComparison.Ordinal)
            || isText && fault.Expected.Contains("of the handbook's list", StringComparison.Ordinal)
            || isText && IsTextOfAFeed(fault)
            || fault.Expected.StartsWith("a water that can be", StringComparison.Ordinal)
            || fault.Path == "rows" && fault.Expected.StartsWith("at most", StringComparison.Ordinal);
    }

    // Lines of a water report, own amounts: plain text to a schema.
    private static bool IsTextOfAFeed(ToldFault fault) =>
        fault.Path.StartsWith("nutrients.", StringComparison.Ordinal)
        && (
            fault.Path.StartsWith("nutrients.wanted.", StringComparison.Ordinal)
            || fault.Path.StartsWith("nutrients.water.", StringComparison.Ordinal)
                && !fault.Path.EndsWith(".conductivity", StringComparison.Ordinal)
                && !fault.Path.EndsWith(".ph", StringComparison.Ordinal)
        )
        && !fault.Expected.StartsWith("text ", StringComparison.Ordinal);

    [Fact]
    public void The_patterns_match_all_that_is_read()
    {
        (Dimension, string)[] texts =
        [
            (Dimension.Length, "1½ in"),
            (Dimension.Length, "6'3 1/2\""),
            (Dimension.Length, "5'-3\""),
            (Dimension.Length, "1-1/2 IN."),
            (Dimension.Length, "-1 ft 6 in"),
            (Dimension.Length, "1e-6 m"),
            (Dimension.Flow, "60 litres per minute"),
            (Dimension.Flow, "3600 GPH"),
            (Dimension.Slope, "1/4\"/ft"),
            (Dimension.Slope, "1 in per 4 ft"),
            (Dimension.Slope, "1:50"),
            (Dimension.Temperature, "68 °F"),
            (Dimension.Pressure, "10 ft H2O"),
            (Dimension.Pressure, "10 ft of water"),
            (Dimension.Duration, "1h30min"),
            (Dimension.Volume, "1 ft³"),
        ];
        foreach (var (dimension, text) in texts)
        {
            Assert.True(QuantityText.Read(dimension, text).Value is not null, text);
            Assert.Matches(QuantityPattern.Of(dimension), text);
        }
    }

    [Fact]
    public void The_patterns_match_random_texts_that_are_read() =>
        Gen.Select(
                Gen.Enum<Dimension>(),
                Gen.OneOf<string>(
                    "1",
                    "1/2",
                    "-",
                    " ",
                    ".5",
                    "3",
                    "in",
                    "ft",
                    "'",
                    "\"",
                    "cm",
                    "m",
                    "%",
                    "gph",
                    "gal",
                    "/",
                    " per ",
                    "L",
                    "h",
                    "min",
                    "½",
                    "F",
                    "°",
                    ":",
                    "e2",
                    "psi",
                    "W",
                    "V",
                    "Hz",
                    "A"
                ).Array[1, 7]
            )
            .Holds(
                (dimension, parts) =>
                {
                    var text = string.Concat(parts);
                    return QuantityText.Read(dimension, text).Value is null
                        || System.Text.RegularExpressions.Regex.IsMatch(
                            text,
                            QuantityPattern.Of(dimension),
                            System.Text.RegularExpressions.RegexOptions.None,
                            TimeSpan.FromSeconds(9)
                        );
                },
                iter: 20_000
            );
}
