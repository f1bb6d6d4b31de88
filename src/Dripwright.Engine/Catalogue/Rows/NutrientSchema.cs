using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue.Rows;

/// <summary>JSON Schema of the rows of salts, targets and stages, with the limits that their readers hold to.</summary>
internal static class NutrientSchema
{
    /// <summary>The schema of a row of one of <see cref="OwnNutrients.Names"/>.</summary>
    public static JsonObject Row(string shelf) =>
        shelf switch
        {
            "salts" => Salt(),
            "targets" => Target(),
            _ => Stage(),
        };

    private static JsonObject Salt() =>
        Row(
            ["key"],
            new JsonObject
            {
                ["key"] = Text(60, "The name by which a rig file asks for it, lower case with dashes."),
                ["basedOn"] = Text(60, "Key of the salt from which all fields you leave out are taken."),
                ["name"] = Text(80, "What a person calls it."),
                ["kind"] = Choice<SaltKind>("How it is handled."),
                ["source"] = Text(600, "Where the figures come from, such as the label."),
                ["sure"] = Choice<Sureness>("How sure they are."),
                ["formula"] = Text(120, "The compound, such as \"MgSO4*7H2O\"."),
                ["purityPercent"] = Number(0.1, 100, "Share of the compound in the product, or strength of an acid."),
                ["label"] = Amounts(LabelForms.Names, 100, "The label's guaranteed analysis in percent of mass."),
                ["acidEquivalentsPerKilogram"] = Number(
                    -50,
                    50,
                    "Acid that a kilogram sets free in mol; negative for a base."
                ),
                ["kilogramsPerLitre"] = Number(0.5, 3, "Density of a liquid at 20 °C."),
                ["part"] = Choice<StockPart>("In which can of concentrate it may stand."),
                ["packKilograms"] = Number(0.001, 2000, "Content of one pack."),
                ["price"] = Number(0, 1e6, "Price of one pack in your currency."),
                ["hazards"] = new JsonObject
                {
                    ["type"] = "array",
                    ["maxItems"] = 12,
                    ["items"] = Choice<Hazard>(null),
                    ["description"] = "What it can do to people, stores and water.",
                },
                ["phFrom"] = Number(0, 14, "Least pH at which a chelate holds its metal."),
                ["phTo"] = Number(0, 14, "Greatest pH at which it does."),
                ["solubilityOf"] = Text(120, "Formula for which the solubility is stated, where it is another."),
                ["solubility"] = new JsonObject
                {
                    ["type"] = "array",
                    ["maxItems"] = 20,
                    ["items"] = Row(
                        ["celsius", "gramsPerKilogramWater"],
                        new JsonObject
                        {
                            ["celsius"] = Number(-10, 100, "Temperature of the water."),
                            ["gramsPerKilogramWater"] = Number(0.01, 20_000, "What dissolves in a kilogram of it."),
                        }
                    ),
                    ["description"] = "What dissolves, at temperatures that rise.",
                },
            }
        );

    private static JsonObject Target() =>
        Row(
            ["key", "name", "source"],
            new JsonObject
            {
                ["key"] = Text(60, "The name by which a rig file or a stage asks for it."),
                ["name"] = Text(80, "What a person calls it."),
                ["source"] = Text(600, "Where the figures come from."),
                ["sure"] = Choice<Sureness>("How sure they are."),
                ["decisiemensPerMetre"] = Number(0.1, 20, "Strength that its source lists."),
                ["milligramsPerLitre"] = Amounts(
                    TargetReader.Fields,
                    5000,
                    "What is wanted, nitrogen as N, sulfur as S."
                ),
                ["millimolesPerLitre"] = Amounts(TargetReader.Fields, 200, "What is wanted."),
            }
        );

    private static JsonObject Stage() =>
        Row(
            ["crop", "stage", "target", "decisiemensPerMetre", "source"],
            new JsonObject
            {
                ["crop"] = Text(60, "Key of the crop."),
                ["stage"] = Choice<GrowthStage>("How far it is."),
                ["target"] = Text(60, "Key of the target whose proportions are used."),
                ["decisiemensPerMetre"] = Number(0.1, 20, "Strength at which it is fed."),
                ["source"] = Text(600, "Where the strength comes from."),
                ["sure"] = Choice<Sureness>("How sure it is."),
            }
        );

    private static JsonObject Row(string[] needed, JsonObject fields) =>
        new()
        {
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = new JsonArray([.. needed.Select(name => (JsonNode)name)]),
            ["properties"] = fields,
        };

    private static JsonObject Text(int longest, string says) =>
        new()
        {
            ["type"] = "string",
            ["minLength"] = 1,
            ["maxLength"] = longest,
            ["description"] = says,
        };

    private static JsonObject Number(double least, double most, string says) =>
        new()
        {
            ["type"] = "number",
            ["minimum"] = least,
            ["maximum"] = most,
            ["description"] = says,
        };

    private static JsonObject Choice<T>(string? says)
        where T : struct, Enum
    {
        var names = Enum.GetNames<T>().Select(name => (JsonNode)RigField.Dashed(name));
        var choice = new JsonObject { ["enum"] = new JsonArray([.. names]) };
        if (says is not null)
        {
            choice["description"] = says;
        }
        return choice;
    }

    private static JsonObject Amounts(IEnumerable<string> names, double most, string says)
    {
        var fields = new JsonObject();
        foreach (var name in names)
        {
            fields[name] = new JsonObject
            {
                ["type"] = "number",
                ["minimum"] = 0,
                ["maximum"] = most,
            };
        }
        var amounts = Row([], fields);
        amounts["description"] = says;
        return amounts;
    }
}
