using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Nutrients;

/// <summary>Salts, targets and amounts of the grower's own, from the catalogue file and the rig file.</summary>
public sealed class OwnNutrientTests
{
    private const string Mine = """
        { "format": 1,
          "salts": [
            { "key": "my-potash", "name": "Potash from the shed", "kind": "salt", "formula": "KNO3", "purity": "98 %",
              "source": "the bag" },
            { "key": "my-blend", "name": "Tomato blend", "kind": "salt", "label": { "p2o5": 9, "k2o": 26, "mgo": 5, "so3": 20 },
              "source": "its label" } ],
          "targets": [
            { "key": "my-tomato", "name": "Tomatoes as my aunt fed them", "source": "her notebook",
              "milligramsPerLitre": { "no3": 160, "p": 40, "k": 320, "ca": 150, "mg": 40, "s": 60 } } ],
          "stages": [
            { "crop": "cucumber", "stage": "young", "target": "my-tomato", "conductivity": "1.7 dS/m", "source": "own trial" } ] }
        """;

    private static PartsCatalogue Catalogue(string text) =>
        CatalogueReader.Read(Encoding.UTF8.GetBytes(text), "mine.json", PartsCatalogue.Default).Catalogue!;

    private static NutrientPlan Plan(string nutrients, PartsCatalogue? catalogue = null)
    {
        catalogue ??= PartsCatalogue.Default;
        var reading = RigReader.Read(
            $$"""{ "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ], "nutrients": { {{nutrients}} } }""",
            "a.rig.json",
            catalogue
        );
        Assert.Empty(reading.Faults);
        return Planner
            .Of(reading.Rig!, reading.Assumed, catalogue, new PlanOptions { Draws = 0, Strength = false })
            .Nutrients!;
    }

    [Fact]
    public void A_salt_of_the_catalogue_file_is_weighed_by_its_formula_or_its_label()
    {
        var mine = Catalogue(Mine);
        var plan = Plan(
            """ "crop": "tomato", "pureShare": "100 %", "salts": [ { "salt": "my-potash" }, { "salt": "my-blend" }, { "salt": "calcium-nitrate-15.5" } ] """,
            mine
        );
        Assert.Contains(plan.Recipe.Lines, line => line.Salt.Key == "my-potash");
        Assert.Contains(plan.Recipe.Lines, line => line.Salt.Key == "my-blend");
        // 26 % K2O by hand: 0.26 · 2 · 39.098 / 94.195 of potassium in a kilogram.
        Assert.Equal(0.26 * 2 / 0.094195, mine.Salts["my-blend"].Brings[Constituent.Potassium], 0.005);
    }

    [Fact]
    public void A_salt_that_the_catalogue_file_does_not_have_is_a_fault_of_the_rig_file()
    {
        var reading = RigReader.Read(
            """{ "nutrients": { "crop": "tomato", "salts": [ { "salt": "my-potasch" } ] } }""",
            "a.rig.json",
            Catalogue(Mine)
        );
        var fault = Assert.Single(reading.Faults);
        Assert.Equal("nutrients.salts[0].salt", fault.Path);
        Assert.Equal("my-potash", fault.Nearest);
    }

    [Fact]
    public void All_faults_of_own_salts_and_targets_are_told_with_their_place()
    {
        var reading = CatalogueReader.Read(
            Encoding.UTF8.GetBytes(
                """
                { "salts": [ { "key": "none", "name": "x", "kind": "salt", "formula": "KNO3", "source": "s" },
                             { "key": "a", "name": "x", "kind": "salt", "formula": "Kno3", "source": "s" },
                             { "key": "b", "name": "x", "kind": "salt", "label": { "k2o": 80, "p2o5": 30 }, "source": "s" } ],
                  "targets": [ { "key": "t", "name": "x", "source": "s" } ],
                  "stages": [ { "crop": "tomato", "stage": "young", "target": "tomatoe", "conductivity": "2 dS/m", "source": "s" } ],
                  "pumps": [ { "key": "p" } ] }
                """
            ),
            "mine.json",
            PartsCatalogue.Default
        );
        Assert.Null(reading.Catalogue);
        string[] paths =
        [
            "salts[0].key",
            "salts[1].formula",
            "salts[2].label",
            "targets[0]",
            "stages[0].target",
            "pumps[0]",
        ];
        Assert.Equal(paths, reading.Faults.Select(fault => fault.Path));
        Assert.All(reading.Faults, fault => Assert.True(fault.Line > 0 && fault.Column > 0));
    }

    [Fact]
    public void The_example_in_the_handbook_reads_without_a_fault()
    {
        var page = CommittedText.Of("docs/handbook/nutrients.md");
        var start = page.IndexOf("```json\n", StringComparison.Ordinal) + "```json".Length;
        var example = page[start..page.IndexOf("```", start, StringComparison.Ordinal)];
        var reading = CatalogueReader.Read(Encoding.UTF8.GetBytes(example), "page", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        Assert.True(reading.Catalogue!.Salts["my-acid"].AcidEquivalents > 8);
        Assert.Equal("my-tomato", reading.Catalogue.Targets.StageOf("tomato", GrowthStage.Young)!.Target);
    }

    [Fact]
    public void A_rig_names_a_target_of_its_own_and_a_stage_takes_it_over()
    {
        var mine = Catalogue(Mine);
        var named = Plan(""" "crop": "tomato", "target": "my-tomato", "pureShare": "100 %" """, mine);
        var staged = Plan(""" "crop": "cucumber", "pureShare": "100 %" """, mine);
        foreach (var plan in new[] { named, staged })
        {
            var wanted = plan.Recipe.Job.Target.Wanted;
            Assert.Equal("my-tomato", plan.Stage.Target);
            // 320 mg/L of potassium to 150 of calcium, whatever the strength.
            Assert.Equal(
                320 / 39.098 / (150 / 40.078),
                wanted[Constituent.Potassium] / wanted[Constituent.Calcium],
                1e-3
            );
        }

        Assert.Equal(1.9, named.Wanted.DecisiemensPerMetre, 1e-9);
        Assert.Equal(1.7, staged.Wanted.DecisiemensPerMetre, 1e-9);
    }

    [Fact]
    public void Own_amounts_stand_as_written_and_the_others_as_they_were()
    {
        var usual = Plan(""" "crop": "tomato", "pureShare": "100 %" """);
        var own = Plan(
            """ "crop": "tomato", "pureShare": "100 %", "wanted": { "potassium": "400 mg/L", "nitrate": "12 mmol/L" } """
        );
        var wanted = own.Recipe.Job.Target.Wanted;
        Assert.Equal(400, Forms.ToMilligramsPerLitre(Constituent.Potassium, wanted[Constituent.Potassium]), 1e-6);
        Assert.Equal(12, wanted[Constituent.NitrateNitrogen], 1e-9);
        Assert.Equal(
            usual.Recipe.Job.Target.Wanted[Constituent.Calcium],
            wanted[Constituent.Calcium],
            0.05 * wanted[Constituent.Calcium]
        );
        Assert.NotEqual(usual.Wanted.DecisiemensPerMetre, own.Wanted.DecisiemensPerMetre, 0.01);
    }

    [Fact]
    public void Own_amounts_with_a_strength_are_scaled_to_it_together()
    {
        var own = Plan(
            """ "crop": "tomato", "pureShare": "100 %", "strength": "1.2 dS/m", "wanted": { "potassium": "400 mg/L", "calcium": "200 mg/L" } """
        );
        var wanted = own.Recipe.Job.Target.Wanted;
        Assert.Equal(1.2, own.Ec.DecisiemensPerMetre, 0.03);
        Assert.Equal(400 / 39.098 / (200 / 40.078), wanted[Constituent.Potassium] / wanted[Constituent.Calcium], 1e-3);
    }

    [Theory]
    [InlineData(""" "wanted": { "potassium": "a lot" } """, "nutrients.wanted.potassium", "mg/L")]
    [InlineData(""" "wanted": { "nitrate": "190 mg/L" } """, "nutrients.wanted.nitrate", "the form must be said")]
    [InlineData(""" "wanted": { "calcium": "90 mol/L" } """, "nutrients.wanted.calcium", "mg/L")]
    [InlineData(""" "wanted": { "calcium": "190000 mg/L" } """, "nutrients.wanted.calcium", "a feed can hold")]
    [InlineData(""" "target": "steinr" """, "nutrients.target", "a target of")]
    public void Amounts_and_targets_that_cannot_be_are_told_with_their_place(
        string nutrients,
        string path,
        string expected
    )
    {
        var reading = RigReader.Read(
            $$"""{ "nutrients": { "crop": "tomato", {{nutrients}} } }""",
            "a.rig.json",
            PartsCatalogue.Default
        );

        Assert.Contains(
            reading.Faults,
            fault => fault.Path == path && fault.Expected.Told().Contains(expected, StringComparison.Ordinal)
        );
    }
}
