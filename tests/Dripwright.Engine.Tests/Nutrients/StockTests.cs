using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class StockTests
{
    private static NutrientRecipe Recipe(string target, params string[] keys) =>
        RecipePlanner.Plan(
            new RecipeJob
            {
                Water = WaterSupply.Pure,
                Target = TargetCatalogue.Default[target],
                Salts = [.. SaltCatalogue.Default.Of(keys).Select(salt => new SaltAtHand(salt))],
            }
        );

    private static NutrientRecipe Hoagland() =>
        Recipe(
            "hoagland-1",
            "calcium-nitrate-4h2o",
            "potassium-nitrate",
            "monopotassium-phosphate",
            "magnesium-sulfate-7h2o"
        );

    [Fact]
    public void Calcium_stands_in_A_and_sulfate_and_phosphate_in_B()
    {
        var plan = StockPlanner.Plan(new StockJob { Recipe = Hoagland() });
        Assert.True(plan.Keeps);
        Assert.Equal(["A", "B"], plan.Cans.Select(can => can.Name));
        Assert.Equal(0, plan.Cans[0].Contents[Constituent.Sulfur] + plan.Cans[0].Contents[Constituent.Phosphorus]);
        Assert.Equal(0, plan.Cans[1].Contents[Constituent.Calcium]);
        Assert.Equal(1, plan.InjectorPercent, 1e-12);
        Assert.Equal(0.010, plan.Cans[0].Volume, 1e-12);
    }

    [Fact]
    public void Both_cans_together_give_the_feed_back()
    {
        var recipe = Hoagland();
        foreach (var parts in new[] { 10.0, 100, 200 })
        {
            var plan = StockPlanner.Plan(
                new StockJob
                {
                    Recipe = recipe,
                    PartsOfFeed = parts,
                    Feed = 3,
                }
            );
            var feed = plan.Cans.Aggregate(Composition.Nothing, (sum, can) => sum + can.Contents * plan.DosePerLitre);
            foreach (var key in Composition.Constituents)
            {
                Assert.Equal(recipe.Composition[key], feed[key], 1e-9);
            }
            foreach (var line in recipe.Lines)
            {
                var mass = plan
                    .Cans.SelectMany(can => can.Lines)
                    .Where(l => l.Salt.Key == line.Salt.Key)
                    .Sum(l => l.Mass);
                Assert.Equal(line.Concentration * 3, mass, 1e-9);
            }
        }
    }

    [Fact]
    public void One_can_above_twice_the_feed_is_flagged_for_phosphate_and_above_eight_times_for_gypsum()
    {
        StockPlan At(double parts) =>
            StockPlanner.Plan(
                new StockJob
                {
                    Recipe = Hoagland(),
                    PartsOfFeed = parts,
                    TwoCans = false,
                    PH = 5.8,
                }
            );
        Assert.True(At(2).Keeps);
        Assert.Contains(
            At(4).Findings,
            finding => finding.Told().What.StartsWith("Calcium phosphate", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            At(4).Findings,
            finding => finding.Told().What.StartsWith("Gypsum", StringComparison.Ordinal)
        );
        Assert.Contains(At(12).Findings, finding => finding.Told().What.StartsWith("Gypsum", StringComparison.Ordinal));
        Assert.InRange(At(100).MostParts!.Value, 2, 4);
    }

    [Fact]
    public void Most_parts_is_where_it_stops_keeping()
    {
        var recipe = Hoagland();
        var most = StockPlanner.Plan(new StockJob { Recipe = recipe }).MostParts!.Value;
        Assert.InRange(most, 100, 999);
        Assert.False(StockPlanner.Plan(new StockJob { Recipe = recipe, PartsOfFeed = most * 1.3 }).Keeps);
    }

    [Fact]
    public void Too_strong_a_concentrate_names_the_salt_that_crystallises()
    {
        var recipe = Recipe(
            "steiner",
            "calcium-nitrate-4h2o",
            "potassium-sulfate",
            "monopotassium-phosphate",
            "magnesium-sulfate-7h2o"
        );
        var plan = StockPlanner.Plan(
            new StockJob
            {
                Recipe = recipe,
                PartsOfFeed = 300,
                Temperature = 278.15,
            }
        );
        Assert.Contains(
            plan.Findings,
            finding =>
                finding.Rule == "stock-saturated"
                && finding.Told().What.Contains("potassium and sulfate", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_salt_alone_is_saturated_at_its_solubility()
    {
        var salt = SaltCatalogue.Default["potassium-sulfate"];
        // 111 g in a kilogram of water is the limit at 20 °C; the water of a litre is a little less than a kilogram.
        var contents = salt.Brings * 100;
        var share = CanContents.Saturations(contents, [salt], 293.15)[0];
        Assert.Equal(100 / 111.0 * 1000 / CanContents.Water(contents), share.Share, 1e-9);
    }

    [Fact]
    public void Gypsum_belongs_in_no_can()
    {
        var recipe = Recipe("steiner", "gypsum", "potassium-nitrate", "monopotassium-phosphate");
        var plan = StockPlanner.Plan(new StockJob { Recipe = recipe });
        Assert.Contains(plan.Findings, finding => finding.Rule == "stock-neither");
    }

    [Fact]
    public void Acid_stands_apart_from_the_chelates()
    {
        var job = new RecipeJob
        {
            Water = new WaterSupply(
                Phrase.Plain("well"),
                Composition.Of((Constituent.Calcium, 1.5), (Constituent.InorganicCarbon, 3)),
                3
            ),
            Target = TargetCatalogue.Default["tomato-closed"],
            Salts =
            [
                .. SaltCatalogue
                    .Default.Of(
                        "calcium-nitrate-15.5",
                        "potassium-nitrate",
                        "monopotassium-phosphate",
                        "magnesium-sulfate-7h2o",
                        "fe-dtpa-11",
                        "nitric-acid-60"
                    )
                    .Select(salt => new SaltAtHand(salt)),
            ],
        };
        var plan = StockPlanner.Plan(new StockJob { Recipe = RecipePlanner.Plan(job) });
        Assert.Contains(plan.Cans[1].Lines, line => line.Salt.Kind == SaltKind.Acid);
        Assert.DoesNotContain(plan.Findings, finding => finding.Rule == "stock-chelate-acid");
    }
}
