using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Nutrients;

/// <summary>A cure of the nutrients is a change of the rig file that does what it says.</summary>
public sealed class NutrientCureTests
{
    private static JsonNode Rig(string nutrients) =>
        JsonNode.Parse(
            $$"""{ "units": "us", "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ], "nutrients": { {{nutrients}} } }"""
        )!;

    private static NutrientPlan Plan(JsonNode rig)
    {
        var reading = RigReader.Read(rig.ToJsonString(), "test.rig.json", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        return Plans.Of(reading.Rig!).Nutrients!;
    }

    private static NutrientPlan Cured(JsonNode rig, Cure cure)
    {
        var changed = rig.DeepClone();
        foreach (var change in cure.Changes)
        {
            var path = change.Field.Split('.');
            Assert.Equal(2, path.Length);
            changed[path[0]]![path[1]] = JsonNode.Parse(change.Text!);
        }

        return Plan(changed);
    }

    private static double Miss(NutrientPlan plan, Constituent element) =>
        Math.Abs(plan.Recipe.Elements.Single(one => one.Constituent == element).Miss!.Value);

    [Theory]
    [InlineData(
        """ "salts": [ { "salt": "potassium-nitrate", "have": "5 kg", "pricePerKg": 2.40 }, { "salt": "calcium-nitrate-15.5" } ] """
    )]
    [InlineData(""" "salts": [] """)]
    [InlineData(""" "target": "cucumber-closed" """)]
    public void A_salt_to_get_brings_its_element_nearer_to_the_target(string salts)
    {
        var rig = Rig($""" "crop": "tomato", "pureShare": "100 %", {salts} """);
        var plan = Plan(rig);
        foreach (var salt in plan.Cures)
        {
            var finding = plan.Findings.First(one =>
                one.Cures.Any(cure => cure.Changes[0].Text!.Contains($"\"{salt.Salt.Key}\"", StringComparison.Ordinal))
            );
            var cure = finding.Cures[0];
            var cured = Cured(rig, cure);
            Assert.True(Miss(cured, salt.Constituent) < Miss(plan, salt.Constituent), salt.Salt.Key);
            Assert.Contains(salt.Salt.Name, cure.Steps[0].Told(), StringComparison.Ordinal);
            Assert.Contains(salt.Salt.Name, finding.Told().Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_the_grower_has_of_the_other_salts_stays_as_it_is_written()
    {
        var rig = Rig(
            """ "crop": "tomato", "pureShare": "100 %", "salts": [ { "salt": "potassium-nitrate", "have": "5 kg", "pricePerKg": 2.40 } ] """
        );
        var cure = Plan(rig).Findings.First(one => one.Rule == "recipe-unreached" && one.Cures.Count > 0).Cures[0];
        var first = JsonNode.Parse(cure.Changes[0].Text!)![0]!;
        Assert.Equal(5, QuantityText.Parse(Dimension.Mass, (string)first["have"]!));
        Assert.Equal("2.40", first["pricePerKg"]!.ToJsonString());
    }

    [Theory]
    [InlineData("0 %")]
    [InlineData("20 %")]
    public void Enough_rain_water_takes_sodium_and_chloride_out_of_the_findings(string pure)
    {
        var rig = Rig(
            $$""" "crop": "tomato", "pureShare": "{{pure}}", "water": { "sodium": "120 mg/L", "chloride": "300 mg/L" } """
        );
        foreach (var rule in new[] { "water-sodium", "water-chloride" })
        {
            var finding = Plan(rig).Findings.Single(one => one.Rule == rule);
            Assert.Equal("nutrients.pureShare", finding.Field);
            Assert.DoesNotContain(Cured(rig, finding.Cures[0]).Findings, one => one.Rule == rule);
        }
    }
}
