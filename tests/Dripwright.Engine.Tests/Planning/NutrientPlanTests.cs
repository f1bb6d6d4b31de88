using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Planning;

public sealed class NutrientPlanTests
{
    internal const string Hard = """
        "water": { "alkalinity": "244 mg/L as HCO3", "calcium": "80 mg/L", "magnesium": "15 mg/L", "sodium": "30 mg/L",
          "potassium": "3 mg/L", "chloride": "50 mg/L", "sulfate": "70 mg/L as SO4", "nitrate": "10 mg/L as NO3",
          "conductivity": "0.65 dS/m", "ph": 7.5 }
        """;

    private static string Rig(string nutrients) =>
        $$"""{ "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ], "nutrients": { {{nutrients}} } }""";

    private static NutrientPlan Plan(string nutrients) => Plans.From(Rig(nutrients)).Nutrients!;

    [Fact]
    public void A_rig_that_asks_for_no_feed_has_none_and_hears_nothing_of_it()
    {
        var plan = Plans.From("""{ "rows": [ { "pots": 10 } ] }""");
        Assert.Null(plan.Nutrients);
        Assert.DoesNotContain(plan.Findings, f => f.Field.StartsWith("nutrients", StringComparison.Ordinal));
        var reading = RigReader.Read("""{ "rows": [ { "pots": 10 } ] }""", "a", PartsCatalogue.Default);
        Assert.Equal(
            "nutrients.crop",
            Assert.Single(reading.Assumed, a => a.Path.StartsWith("nutrients", StringComparison.Ordinal)).Path
        );
    }

    [Theory]
    [InlineData("tomato", "young", 1.9)]
    [InlineData("cucumber", "full-crop", 2.2)]
    [InlineData("sweet-pepper", "fruiting", 2.3)]
    public void From_pure_water_the_feed_reads_the_strength_of_crop_and_stage(string crop, string stage, double ec)
    {
        var plan = Plan($""" "crop": "{crop}", "stage": "{stage}", "pureShare": "100 %" """);
        Assert.Equal(ec, plan.Wanted.DecisiemensPerMetre, 1e-9);
        Assert.Equal(ec, plan.Ec.DecisiemensPerMetre, 0.03 * ec);
        Assert.Equal(0, plan.AcidVolume);
    }

    [Fact]
    public void Hard_water_gets_its_acid_and_comes_to_rest_at_the_pH_wanted()
    {
        var plan = Plan($""" "crop": "tomato", "acid": "nitric-acid-60", "mixing": "cans", {Hard} """);
        Assert.Equal(1.9, plan.Ec.DecisiemensPerMetre, 0.04);
        Assert.Equal(5.8, plan.PH!.Value, 0.1);
        // 4 meq/L of alkalinity; a litre of 60 % nitric acid holds 13 equivalents: 0.3 mL in a litre of feed.
        Assert.Equal(0.3e-3 * plan.Volume, plan.AcidVolume, 0.03e-3 * plan.Volume);
        Assert.Equal(2, plan.Stock!.Cans.Count);
        Assert.Contains(plan.Stock.Cans[1].Lines, l => l.Salt.Key == "nitric-acid-60");
    }

    [Fact]
    public void Without_acid_hard_water_is_told_of_its_pH()
    {
        var plan = Plan($""" "crop": "tomato", {Hard} """);
        Assert.True(plan.PH > 7.5);
        Assert.Equal("nutrients.acid", plan.Findings.First(f => f.Rule == "recipe-no-acid").Field);
        Assert.Equal("nutrients.acid", plan.Findings.First(f => f.Rule == "recipe-ph-off").Field);
    }

    [Fact]
    public void Salt_in_the_water_builds_up_while_the_EC_is_held()
    {
        var plan = Plan(
            """ "crop": "tomato", "acid": "nitric-acid-60", "water": { "sodium": "60 mg/L", "chloride": "92 mg/L", "alkalinity": "1 meq/L", "calcium": "20 mg/L", "magnesium": "0 mg/L", "sulfate": "0 mg/L as SO4" } """
        );
        var outlook = plan.Outlook!;
        Assert.Equal(84, outlook.Held.Evenings.Count);
        Assert.NotNull(outlook.SodiumDay);
        Assert.Contains(outlook.Hidden.Take(3), h => h.Constituent == Constituent.Sodium && h.Off > 0);
        Assert.True(outlook.Dumping!.Dumps > 0);
        Assert.Contains(plan.Findings, f => f.Rule == "loop-sodium");
    }

    [Fact]
    public void Rain_water_halves_what_the_water_brings()
    {
        double Sodium(string share) =>
            Plan($""" "crop": "tomato", "pureShare": "{share}", {Hard} """).Filled.Composition[Constituent.Sodium];
        Assert.Equal(Sodium("0 %") / 2, Sodium("50 %"), 1e-9);
    }

    [Fact]
    public void A_salt_at_hand_is_priced_and_never_used_beyond_what_there_is()
    {
        var plan = Plan(
            """ "crop": "tomato", "pureShare": "100 %", "salts": [ { "salt": "potassium-nitrate", "pricePerKg": 2, "have": "10 g" }, { "salt": "calcium-nitrate-15.5", "pricePerKg": 1 } ] """
        );
        var line = Assert.Single(plan.Recipe.Lines, l => l.Salt.Key == "potassium-nitrate");
        Assert.Equal(0.01, line.Mass, 1e-6);
        Assert.Equal(
            plan.Recipe.Lines.Sum(l => l.Mass * (l.Salt.Key == "potassium-nitrate" ? 2 : 1)),
            (double)plan.Recipe.Cost,
            1e-9
        );
        Assert.Contains(plan.Cures, c => c.Constituent == Constituent.Phosphorus);
    }

    [Fact]
    public void Raw_coir_gets_its_rinse_by_volume()
    {
        var plan = Plan(""" "crop": "tomato", "rawCoir": true """);
        Assert.True(plan.Coir!.Coir > 0);
        Assert.Equal(3 * plan.Coir.Coir, plan.Coir.Rinse, 1e-12);
    }

    [Theory]
    [InlineData(""" "strength": "1200 ppm" """, "nutrients.strength", "scale of the meter")]
    [InlineData(""" "ph": 9 """, "nutrients.ph", "from 5 to 7")]
    [InlineData(""" "water": { "nitrate": "20 mg/L" } """, "nutrients.water.nitrate", "the form must be said")]
    [InlineData(""" "water": { "alkalinity": "150" } """, "nutrients.water.alkalinity", "a number needs its unit")]
    [InlineData(""" "water": { "calcium": "60 stones" } """, "nutrients.water.calcium", "60 mg/L")]
    [InlineData(
        """ "water": { "alkalinity": "5 meq/L", "calcium": "0 mg/L", "magnesium": "0 mg/L", "sodium": "0 mg/L", "potassium": "0 mg/L" } """,
        "nutrients.water",
        "a water that can be"
    )]
    [InlineData(""" "water": { "calcium": "-5 mg/L" } """, "nutrients.water.calcium", "never minus")]
    [InlineData(
        """ "water": { "alkalinity": "4 meq/L", "calcium": "80 mg/L", "magnesium": "15 mg/L", "sodium": "12 mg/L", "potassium": "3 mg/L", "chloride": "22 mg/L", "sulfate": "70 mg/L as SO4", "nitrate": "10 mg/L as NO3", "conductivity": "4 dS/m", "ph": 7.5 } """,
        "nutrients.water.conductivity",
        "The ions reported carry about 0.60 dS/m"
    )]
    [InlineData(""" "salts": [ { "salt": "calcium-nitrat-15.5" } ] """, "nutrients.salts[0].salt", "a salt of")]
    [InlineData(
        """ "salts": [ { "salt": "potassium-nitrate", "pricePerKg": "2 $" } ] """,
        "nutrients.salts[0].pricePerKg",
        "a number without quotes"
    )]
    public void What_cannot_be_is_told_with_its_place(string nutrients, string path, string expected)
    {
        var reading = RigReader.Read(Rig(nutrients), "a.rig.json", PartsCatalogue.Default);
        Assert.Contains(
            reading.Faults,
            f =>
                f.Path.StartsWith(path, StringComparison.Ordinal)
                && f.Expected.Told().Contains(expected, StringComparison.Ordinal)
                && f.Line == 1
                && f.Column > 1
        );
    }

    [Theory]
    [InlineData("60 mg/L", "1.497 mmol/L")]
    [InlineData("60 ppm", "60000 ug/L")]
    [InlineData("150 mg/L as CaCO3", "1.4987 mmol/L")]
    [InlineData("2 mmol/L", "4 meq/L")]
    public void Units_of_a_report_agree(string one, string other)
    {
        double Calcium(string text) =>
            Plan($$""" "crop": "tomato", "water": { "calcium": "{{text}}" } """).Filled.Composition[
                Constituent.Calcium
            ];
        Assert.Equal(Calcium(one), Calcium(other), 1e-3);
    }
}
