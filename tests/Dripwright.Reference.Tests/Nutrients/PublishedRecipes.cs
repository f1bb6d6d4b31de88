using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Nutrients.Recipe;

namespace Dripwright.Reference.Tests.Nutrients;

public sealed class PublishedRecipes
{
    private static readonly SaltCatalogue s_salts = SaltCatalogue.Default;
    private static readonly TargetCatalogue s_targets = TargetCatalogue.Default;

    private static Composition Mix(params (string Key, double GramsPerLitre)[] salts) =>
        salts.Aggregate(Composition.Nothing, (sum, salt) => sum + s_salts[salt.Key].Brings * salt.GramsPerLitre);

    private static double Milligrams(Composition feed, Constituent element) =>
        Forms.ToMilligramsPerLitre(element, feed[element]);

    private static NutrientRecipe Plan(NutrientTarget target, double litres, params string[] keys) =>
        RecipePlanner.Plan(
            new RecipeJob
            {
                Water = WaterSupply.Pure,
                Target = target,
                Salts = [.. s_salts.Of(keys).Select(salt => new SaltAtHand(salt))],
                Volume = litres / 1000,
            }
        );

    private static double Grams(NutrientRecipe recipe, string key) =>
        recipe.Lines.Single(line => line.Salt.Key == key).Mass * 1000;

    // Hoagland and Arnon, Circular 347, 1950: mL of 1 mol/L stocks in a litre; mg/L as printed in encyclopedia articles on it.
    [Fact]
    public void Hoagland_one_from_its_weights()
    {
        var feed = Mix(
            ("calcium-nitrate-4h2o", 1.1807),
            ("potassium-nitrate", 0.5055),
            ("monopotassium-phosphate", 0.1361),
            ("magnesium-sulfate-7h2o", 0.4929)
        );
        Assert.Equal(210, Milligrams(feed, Constituent.NitrateNitrogen), 0.005 * 210);
        Assert.Equal(31, Milligrams(feed, Constituent.Phosphorus), 0.005 * 31);
        Assert.Equal(235, Milligrams(feed, Constituent.Potassium), 0.005 * 235);
        Assert.Equal(200, Milligrams(feed, Constituent.Calcium), 0.005 * 200);
        Assert.Equal(48.6, Milligrams(feed, Constituent.Magnesium), 0.005 * 48.6);
        Assert.Equal(64, Milligrams(feed, Constituent.Sulfur), 0.005 * 64);
        Assert.Equal(20.00, Charges.Cations(feed), 0.01);
        Assert.Equal(20.00, Charges.Anions(feed), 0.01);
    }

    [Fact]
    public void Hoagland_two_from_its_weights()
    {
        var feed = Mix(
            ("calcium-nitrate-4h2o", 0.9446),
            ("potassium-nitrate", 0.6066),
            ("monoammonium-phosphate", 0.1150),
            ("magnesium-sulfate-7h2o", 0.4929)
        );
        var nitrogen = Milligrams(feed, Constituent.NitrateNitrogen) + Milligrams(feed, Constituent.AmmoniumNitrogen);
        Assert.Equal(210, nitrogen, 0.005 * 210);
        Assert.Equal(160, Milligrams(feed, Constituent.Calcium), 0.005 * 160);
        Assert.Equal(6, feed[Constituent.Potassium], 0.005 * 6);
        Assert.Equal(14, feed[Constituent.NitrateNitrogen], 0.005 * 14);
        Assert.Equal(1, feed[Constituent.AmmoniumNitrogen], 0.005);
        Assert.Equal(2, feed[Constituent.Sulfur], 0.005 * 2);
        Assert.Equal(19.00, Charges.Cations(feed), 0.01);
        Assert.Equal(19.00, Charges.Anions(feed), 0.01);
        Assert.Equal(0.0667, Milligrams(feed, Constituent.AmmoniumNitrogen) / nitrogen, 0.0001);
    }

    // Hershey, quoting the circular: g/L of the micro stock, of which 1 mL goes into a litre (molybdic acid left out).
    [Fact]
    public void Hoagland_micro_from_its_weights()
    {
        var feed = Mix(
            ("boric-acid", 0.00286),
            ("manganese-chloride-4h2o", 0.00181),
            ("zinc-sulfate-7h2o", 0.00022),
            ("copper-sulfate-5h2o", 0.00008)
        );
        Assert.Equal(0.5, Milligrams(feed, Constituent.Boron), 0.03 * 0.5);
        Assert.Equal(0.5, Milligrams(feed, Constituent.Manganese), 0.03 * 0.5);
        Assert.Equal(0.05, Milligrams(feed, Constituent.Zinc), 0.03 * 0.05);
        Assert.Equal(0.02, Milligrams(feed, Constituent.Copper), 0.03 * 0.02);
        Assert.Equal(0.65, Milligrams(feed, Constituent.Chloride), 0.03 * 0.65);
    }

    [Fact]
    public void Hoagland_one_back_to_its_weights()
    {
        // 400 L of it: 472.3, 202.2, 54.4 and 197.2 g.
        var recipe = Plan(
            s_targets["hoagland-1"],
            400,
            "calcium-nitrate-4h2o",
            "potassium-nitrate",
            "monopotassium-phosphate",
            "magnesium-sulfate-7h2o",
            "boric-acid",
            "manganese-chloride-4h2o",
            "zinc-sulfate-7h2o",
            "copper-sulfate-5h2o",
            "sodium-molybdate-2h2o"
        );
        Assert.Equal(472.3, Grams(recipe, "calcium-nitrate-4h2o"), 0.001 * 472.3);
        Assert.Equal(202.2, Grams(recipe, "potassium-nitrate"), 0.001 * 202.2);
        Assert.Equal(54.4, Grams(recipe, "monopotassium-phosphate"), 0.001 * 54.4);
        Assert.Equal(197.2, Grams(recipe, "magnesium-sulfate-7h2o"), 0.001 * 197.2);
        Assert.Equal(400 * 0.00286, Grams(recipe, "boric-acid"), 0.03 * 400 * 0.00286);
        Assert.Equal(400 * 0.00181, Grams(recipe, "manganese-chloride-4h2o"), 0.03 * 400 * 0.00181);
        Assert.Equal(400 * 0.00022, Grams(recipe, "zinc-sulfate-7h2o"), 0.03 * 400 * 0.00022);
        Assert.Equal(400 * 0.00008, Grams(recipe, "copper-sulfate-5h2o"), 0.03 * 400 * 0.00008);
        Assert.All(
            recipe.Elements,
            element => Assert.True(element.Verdict is ElementVerdict.Reached or ElementVerdict.NotAsked)
        );
    }

    [Fact]
    public void Hoagland_two_back_to_its_weights()
    {
        var recipe = Plan(
            s_targets["hoagland-2"],
            1000,
            "calcium-nitrate-4h2o",
            "potassium-nitrate",
            "monoammonium-phosphate",
            "magnesium-sulfate-7h2o"
        );
        Assert.Equal(944.6, Grams(recipe, "calcium-nitrate-4h2o"), 0.0005 * 944.6);
        Assert.Equal(606.6, Grams(recipe, "potassium-nitrate"), 0.0005 * 606.6);
        Assert.Equal(115.0, Grams(recipe, "monoammonium-phosphate"), 0.0005 * 115.0);
        Assert.Equal(492.9, Grams(recipe, "magnesium-sulfate-7h2o"), 0.0005 * 492.9);
    }

    // A. A. Steiner 1961 (numbers from memory, charges close), with one of several splits of salts.
    [Fact]
    public void Steiner_both_ways()
    {
        var feed = Mix(
            ("calcium-nitrate-4h2o", 1.0627),
            ("potassium-nitrate", 0.3033),
            ("monopotassium-phosphate", 0.1361),
            ("potassium-sulfate", 0.2614),
            ("magnesium-sulfate-7h2o", 0.4929)
        );
        Assert.Equal(168, Milligrams(feed, Constituent.NitrateNitrogen), 0.005 * 168);
        Assert.Equal(31, Milligrams(feed, Constituent.Phosphorus), 0.005 * 31);
        Assert.Equal(273, Milligrams(feed, Constituent.Potassium), 0.005 * 273);
        Assert.Equal(180, Milligrams(feed, Constituent.Calcium), 0.005 * 180);
        Assert.Equal(48.6, Milligrams(feed, Constituent.Magnesium), 0.005 * 48.6);
        Assert.Equal(112, Milligrams(feed, Constituent.Sulfur), 0.005 * 112);
        Assert.Equal(20.0, Charges.Cations(feed), 0.01);
        var recipe = Plan(
            s_targets["steiner"],
            1000,
            "calcium-nitrate-4h2o",
            "potassium-nitrate",
            "monopotassium-phosphate",
            "potassium-sulfate",
            "magnesium-sulfate-7h2o"
        );
        Assert.Equal(1062.7, Grams(recipe, "calcium-nitrate-4h2o"), 0.0005 * 1062.7);
        Assert.Equal(303.3, Grams(recipe, "potassium-nitrate"), 0.0005 * 303.3);
        Assert.Equal(136.1, Grams(recipe, "monopotassium-phosphate"), 0.0005 * 136.1);
        Assert.Equal(261.4, Grams(recipe, "potassium-sulfate"), 0.0005 * 261.4);
        Assert.Equal(492.9, Grams(recipe, "magnesium-sulfate-7h2o"), 0.0005 * 492.9);
    }

    // Grower-extension slides on sweet pepper, 2015: mg/L; meq/L follow.
    [Fact]
    public void Pepper_feed_of_2015_balances_and_is_reached()
    {
        var target = s_targets["pepper-2015"];
        Assert.Equal(22.58, Charges.Cations(target.Complete), 0.1);
        Assert.Equal(22.35, Charges.Anions(target.Complete), 0.1);
        Assert.Equal(13.565, target.Wanted[Constituent.NitrateNitrogen], 0.005);
        Assert.Equal(120.2, Milligrams(target.Complete, Constituent.Sulfur), 0.1);
        var recipe = Plan(
            target,
            1000,
            "calcium-nitrate-15.5",
            "potassium-nitrate",
            "ammonium-nitrate",
            "monopotassium-phosphate",
            "potassium-sulfate",
            "magnesium-sulfate-7h2o",
            "fe-dtpa-11",
            "manganese-sulfate-1h2o",
            "zinc-sulfate-7h2o",
            "boric-acid",
            "copper-sulfate-5h2o",
            "sodium-molybdate-2h2o"
        );
        // The target's cations exceed its anions by 0.23 meq/L. A neutral feed must make that up, and sulfate, which counts least, takes
        // it: at most 0.23 of 7.496 meq/L.
        Assert.All(
            recipe.Elements.Where(element => element.Wanted > 0),
            element =>
                Assert.InRange(
                    Math.Abs(element.Miss!.Value),
                    0,
                    element.Constituent == Constituent.Sulfur ? 0.23 / 7.496 : 0.01
                )
        );
        Assert.Equal(0.087, recipe.AmmoniumShare, 0.002);
    }

    // University of Arizona CEAC, tomato in fruit, as quoted: fed N, P, K, Ca and Mg alone, neutral salts must bring 103 mg/L of S.
    [Fact]
    public void Arizona_tomato_in_fruit_gets_the_sulfur_that_charges_ask_for()
    {
        var target = s_targets["tomato-arizona-fruiting"];
        Assert.Equal(21.15, Charges.Cations(target.Complete), 0.02);
        var recipe = Plan(
            target,
            1000,
            "calcium-nitrate-4h2o",
            "potassium-nitrate",
            "monopotassium-phosphate",
            "potassium-sulfate",
            "magnesium-sulfate-7h2o",
            "magnesium-nitrate-6h2o"
        );
        Assert.Equal(103, Milligrams(recipe.Composition, Constituent.Sulfur), 0.02 * 103);
    }

    // N. Mattson, e-GRO Edible Alert 2018, worked examples.
    [Fact]
    public void Mattson_nitrogen_from_calcium_nitrate()
    {
        var salt = s_salts["calcium-nitrate-15.5"];
        var nitrogen = salt.MassFraction(Constituent.NitrateNitrogen) + salt.MassFraction(Constituent.AmmoniumNitrogen);
        var gramsPerLitre = 0.100 / nitrogen;
        Assert.Equal(645.2, gramsPerLitre * 1000, 0.1);
        Assert.Equal(122.6, gramsPerLitre * 1000 * salt.MassFraction(Constituent.Calcium), 0.1);
        Assert.Equal(64.5, gramsPerLitre * 100, 0.05);
        Assert.Equal(129.0, gramsPerLitre * 200, 0.1);
        Assert.Equal(8.61, gramsPerLitre * 378.5412 / 28.349523, 0.01);
    }

    [Fact]
    public void Mattson_magnesium_and_phosphate()
    {
        var salt = s_salts["magnesium-sulfate-label"];
        var milligrams = 40 / salt.MassFraction(Constituent.Magnesium);
        Assert.Equal(412, milligrams, 0.5);
        Assert.Equal(53.56, milligrams * salt.MassFraction(Constituent.Sulfur), 0.06);
        var label = LabelForms.Composition([("p2o5", 12.0)]);
        Assert.Equal(5.24, label[Constituent.Phosphorus] * Forms.MassPerMole(Constituent.Phosphorus) * 100, 0.005);
    }

    // Dutch recipes (Sonneveld and Straver 1994, Sonneveld and Voogt 2009, from memory): charges close exactly.
    [Theory]
    [InlineData("tomato-drain", 26.30)]
    [InlineData("tomato-closed", 15.00)]
    [InlineData("cucumber-drain", 20.00)]
    [InlineData("cucumber-closed", 15.00)]
    [InlineData("pepper-drain", 20.25)]
    [InlineData("pepper-closed", 15.50)]
    public void Dutch_targets_close(string key, double charge)
    {
        var complete = s_targets[key].Complete;
        Assert.Equal(charge, Charges.Cations(complete), 0.001);
        Assert.Equal(charge, Charges.Anions(complete), 0.001);
    }
}
