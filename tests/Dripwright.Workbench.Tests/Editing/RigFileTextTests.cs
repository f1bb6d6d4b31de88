using System.Text.Json.Nodes;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Tests.Editing;

public sealed class RigFileTextTests
{
    private const string Commented = """
        {
          // Ten tomatoes in one row.
          "name": "Ten", // mine
          "rows": [
            { "pots": 10, "planting": [{ "pots": "1-9" }, { "pots": "10" }] },
          ],
          "feed": { "line": "hose-1/2" } // last, no comma
        }
        """;

    private static readonly string[] s_paths =
    [
        "name",
        "notes",
        "rows",
        "rows[0]",
        "rows[0].pots",
        "rows[0].spacing",
        "rows[0].planting",
        "rows[0].planting[0]",
        "rows[0].planting[0].crop",
        "rows[1].pots",
        "feed.line",
        "feed.header.run",
        "pump.curve[0].head",
        "onHand[0].part",
    ];

    private static readonly Gen<JsonNode> s_value = Gen.OneOf(
        Gen.String[Gen.Char["abc \"\\/,{}[]:½µ/*"], 0, 12].Select(text => (JsonNode)JsonValue.Create(text)!),
        Gen.Int[-3, 400].Select(number => (JsonNode)JsonValue.Create(number)),
        Gen.Bool.Select(flag => (JsonNode)JsonValue.Create(flag)),
        Gen.Const(0).Select(_ => (JsonNode)new JsonObject()),
        Gen.Const(0).Select(_ => (JsonNode)new JsonArray(new JsonObject { ["pots"] = "all" }))
    );

    private static readonly Gen<string> s_text = Pick.From(
        Commented,
        "{}",
        "{ }",
        "{\n}",
        "{ // nothing yet\n}",
        """{"name":"x","rows":[{}]}""",
        "{\n  \"feed\": {\n    \"line\": \"a\", /* b */\n  },\n}",
        "{ \"rows\": [ /* none */ ], \"feed\": 5 }"
    );

    [Fact]
    public void What_is_set_at_a_path_is_found_there() =>
        Gen.Select(s_text, Pick.From(s_paths), s_value)
            .Holds(
                (text, path, value) =>
                {
                    var set = TrySet(text, path, value);
                    Assert.True(set is null || JsonNode.DeepEquals(RigFileText.Get(set, path), value), set);
                },
                iter: 5_000
            );

    [Fact]
    public void Any_row_of_edits_does_to_the_text_what_it_does_to_the_nodes() =>
        Gen.Select(s_text, Gen.Select(Pick.From(s_paths), s_value, Gen.Bool).Array[1, 12])
            .Holds(
                (text, edits) =>
                {
                    var nodes = RigFileText.Root(text)!;
                    foreach (var (path, value, isRemoval) in edits)
                    {
                        if (isRemoval)
                        {
                            text = RigFileText.Remove(text, path);
                            Nodes.Remove(nodes, path);
                        }
                        else if (TrySet(text, path, value) is { } set)
                        {
                            text = set;
                            Nodes.Set(nodes, path, value);
                        }

                        Assert.True(JsonNode.DeepEquals(RigFileText.Root(text), nodes), $"{path}\n{text}\n{nodes}");
                    }
                },
                iter: 5_000
            );

    [Fact]
    public void Comments_and_other_fields_stay_as_typed()
    {
        var text = RigFileText.Set(Commented, "rows[0].spacing", "14 in");
        text = RigFileText.Set(text, "feed.emittersPerPot", 3);
        text = RigFileText.Set(text, "notes", "seen");
        Assert.Equal(
            """
            {
              // Ten tomatoes in one row.
              "name": "Ten", // mine
              "rows": [
                { "pots": 10, "planting": [{ "pots": "1-9" }, { "pots": "10" }], "spacing": "14 in" },
              ],
              "feed": { "line": "hose-1/2", "emittersPerPot": 3 }, // last, no comma
              "notes": "seen"
            }
            """,
            text,
            ignoreLineEndingDifferences: true
        );
    }

    [Fact]
    public void Setting_a_field_that_was_not_there_and_taking_it_away_gives_the_text_back()
    {
        foreach (var path in new[] { "rows[0].spacing", "feed.emittersPerPot", "rows[0].planting[0].crop" })
        {
            Assert.Equal(Commented, RigFileText.Remove(RigFileText.Set(Commented, path, "x"), path));
        }
    }

    [Fact]
    public void A_half_typed_value_is_kept_as_it_is_and_told_as_a_fault_of_its_field()
    {
        var text = RigFileText.Set(Commented, "rows[0].spacing", "14 inc and");
        var reading = RigReader.Read(text, "x", PartsCatalogue.Default);
        Assert.Contains(reading.Faults, fault => fault.Path == "rows[0].spacing");
        Assert.Equal("14 inc and", RigFileText.Get(text, "rows[0].spacing")!.GetValue<string>());
    }

    private static string? TrySet(string text, string path, JsonNode value)
    {
        try
        {
            return RigFileText.Set(text, path, value);
        }
        catch (FormatException)
        {
            // The index lies beyond its list.
            return null;
        }
    }

    /// <summary>The same edits on nodes, the plain way.</summary>
    private static class Nodes
    {
        public static void Set(JsonObject root, string path, JsonNode value)
        {
            JsonNode at = root;
            var steps = FieldPath.Steps(path);
            for (var i = 0; i < steps.Count; i++)
            {
                var made =
                    i == steps.Count - 1 ? value.DeepClone()
                    : steps[i + 1].Index < 0 ? new JsonObject()
                    : (JsonNode)new JsonArray();
                var isFitting = i < steps.Count - 1 && Child(at, steps[i])?.GetType() == made.GetType();
                if (!isFitting)
                {
                    Put(at, steps[i], made);
                }

                at = Child(at, steps[i])!;
            }
        }

        public static void Remove(JsonObject root, string path)
        {
            var steps = FieldPath.Steps(path);
            JsonNode? at = root;
            foreach (var step in steps.SkipLast(1))
            {
                at = at is null ? null : Child(at, step);
            }

            if (at is JsonObject fields && steps[^1].Index < 0)
            {
                fields.Remove(steps[^1].Name);
            }
            else if (at is JsonArray list && steps[^1].Index >= 0 && steps[^1].Index < list.Count)
            {
                list.RemoveAt(steps[^1].Index);
            }
        }

        private static JsonNode? Child(JsonNode at, (string Name, int Index) step) =>
            step.Index < 0 ? (at as JsonObject)?[step.Name]
            : at is JsonArray list && step.Index < list.Count ? list[step.Index]
            : null;

        private static void Put(JsonNode at, (string Name, int Index) step, JsonNode value)
        {
            if (step.Index < 0)
            {
                ((JsonObject)at)[step.Name] = value;
            }
            else if (step.Index == ((JsonArray)at).Count)
            {
                ((JsonArray)at).Add(value);
            }
            else
            {
                ((JsonArray)at)[step.Index] = value;
            }
        }
    }
}
