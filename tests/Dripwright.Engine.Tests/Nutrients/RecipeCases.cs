using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class RecipeCases
{
    private static readonly string[] s_usual =
    [
        "calcium-nitrate-15.5",
        "potassium-nitrate",
        "monopotassium-phosphate",
        "potassium-sulfate",
        "magnesium-sulfate-7h2o",
        "fe-dtpa-11",
        "manganese-sulfate-1h2o",
        "zinc-sulfate-7h2o",
        "boric-acid",
        "copper-sulfate-5h2o",
        "sodium-molybdate-2h2o",
    ];

    private static RecipeJob Job(string target, params string[] keys) =>
        new()
        {
            Water = WaterSupply.Pure,
            Target = TargetCatalogue.Default[target],
            Salts = [.. SaltCatalogue.Default.Of(keys).Select(salt => new SaltAtHand(salt))],
        };

    private static WaterSupply Hard(double alkalinity) =>
        new(
            Phrase.Plain("well"),
            Composition.Of((Constituent.Calcium, alkalinity / 2), (Constituent.InorganicCarbon, alkalinity)),
            alkalinity
        );

    [Fact]
    public void No_salts_give_the_water_and_say_what_is_missing()
    {
        var recipe = RecipePlanner.Plan(Job("tomato-closed"));
        Assert.Empty(recipe.Lines);
        Assert.Equal(Composition.Nothing, recipe.Composition);
        Assert.Contains(recipe.Findings, finding => finding.Told().What == "None of your salts brings potassium.");
    }

    [Fact]
    public void One_salt_is_given_as_far_as_it_helps_the_whole()
    {
        var recipe = RecipePlanner.Plan(Job("tomato-closed", "potassium-nitrate"));
        var line = Assert.Single(recipe.Lines);
        // Potassium and nitrate weigh alike and come one to one: the fit stands between 6.5 and 10.75 mol/m³.
        Assert.InRange(line.Concentration / 0.101102, 6.5, 10.75);
    }

    [Fact]
    public void A_target_of_nothing_takes_nothing()
    {
        var job = Job("tomato-closed", s_usual);
        var nothing = job.Target with { Wanted = job.Target.Wanted.ToDictionary(pair => pair.Key, _ => 0.0) };
        Assert.Empty(RecipePlanner.Plan(job with { Target = nothing }).Lines);
    }

    [Fact]
    public void Water_that_is_above_the_target_is_named_and_fed_as_little_more_as_nitrogen_allows()
    {
        var water = new WaterSupply(
            Phrase.Plain("well"),
            Composition.Of((Constituent.Calcium, 4), (Constituent.Sulfur, 4)),
            0
        );
        var recipe = RecipePlanner.Plan(Job("tomato-closed", s_usual) with { Water = water });
        var pure = RecipePlanner.Plan(Job("tomato-closed", s_usual));
        double Added(NutrientRecipe of, Constituent key) => of.Elements.Single(e => e.Constituent == key).FromSalts;
        Assert.Equal(
            ElementVerdict.WaterOver,
            recipe.Elements.Single(e => e.Constituent == Constituent.Calcium).Verdict
        );
        Assert.Contains(recipe.Findings, finding => finding.Rule == "recipe-water-over");
        Assert.True(Added(recipe, Constituent.Calcium) < 0.6 * Added(pure, Constituent.Calcium));
        Assert.DoesNotContain(recipe.Lines, line => line.Salt.Key == "potassium-sulfate");
    }

    [Fact]
    public void Acid_takes_up_the_alkalinity_and_its_nitrogen_counts()
    {
        var recipe = RecipePlanner.Plan(Job("tomato-closed", [.. s_usual, "nitric-acid-38"]) with { Water = Hard(4) });
        Assert.Equal(3.5, recipe.AcidGiven, 1e-9);
        Assert.Equal(0.5, recipe.Alkalinity, 1e-9);
        var acid = recipe.Lines.Single(line => line.Salt.Kind == SaltKind.Acid);
        // 134.5 mL of 38 % acid are 1 mol of H⁺: 3.5 mol/m³ on 100 L.
        Assert.Equal(3.5 * 0.1 * 134.5, acid.Measured!.Value * 1e6, 0.5);
        Assert.Equal(10.75, recipe.Composition[Constituent.NitrateNitrogen], 0.05 * 10.75);
    }

    [Fact]
    public void Without_acid_the_alkalinity_that_stays_is_named()
    {
        var recipe = RecipePlanner.Plan(Job("tomato-closed", s_usual) with { Water = Hard(4) });
        Assert.Equal(0, recipe.AcidGiven);
        Assert.Contains(recipe.Findings, finding => finding.Rule == "recipe-no-acid");
    }

    [Fact]
    public void Phosphoric_acid_alone_overfeeds_phosphorus_and_says_so()
    {
        var recipe = RecipePlanner.Plan(
            Job("tomato-closed", [.. s_usual, "phosphoric-acid-75"]) with
            {
                Water = Hard(4),
            }
        );
        Assert.Contains(recipe.Findings, finding => finding.Rule == "recipe-acid-overfeeds");
    }

    [Fact]
    public void A_missing_trace_is_cured_by_the_salt_that_brings_it()
    {
        var recipe = RecipePlanner.Plan(Job("tomato-closed", [.. s_usual.Where(key => key != "boric-acid")]));
        var cure = Assert.Single(
            RecipeCures.Of(recipe, SaltCatalogue.Default),
            c => c.Constituent == Constituent.Boron
        );
        Assert.Contains(cure.Salt.Key, new[] { "boric-acid", "borax" });
        Assert.Equal(-1, cure.MissBefore, 1e-9);
        Assert.InRange(cure.MissAfter, -0.01, 0.01);
    }

    [Fact]
    public void A_chelate_out_of_its_pH_is_named()
    {
        var job = Job("tomato-closed", [.. s_usual.Where(key => key != "fe-dtpa-11"), "fe-edta-13"]);
        Assert.DoesNotContain(RecipePlanner.Plan(job).Findings, finding => finding.Rule == "recipe-chelate-ph");
        Assert.Contains(RecipePlanner.Plan(job with { PH = 6.8 }).Findings, f => f.Rule == "recipe-chelate-ph");
    }

    [Fact]
    public void The_cheaper_of_two_equal_salts_is_taken()
    {
        var catalogue = SaltCatalogue.Default;
        var dear = catalogue["potassium-nitrate"] with { Key = "a-dear", Price = 50, Pack = 25 };
        var cheap = dear with { Key = "b-cheap", Price = 40 };
        var job = Job("hoagland-1", "calcium-nitrate-4h2o", "monopotassium-phosphate", "magnesium-sulfate-7h2o");
        var recipe = RecipePlanner.Plan(job with { Salts = [.. job.Salts, new(dear), new(cheap)] });
        Assert.Contains(recipe.Lines, line => line.Salt.Key == "b-cheap");
        Assert.DoesNotContain(recipe.Lines, line => line.Salt.Key == "a-dear");
        Assert.Equal(3, recipe.Unpriced.Count);
    }

    [Fact]
    public void What_is_at_hand_is_not_overdrawn()
    {
        var job = Job("hoagland-1", "calcium-nitrate-4h2o", "potassium-nitrate");
        var few = job.Salts.Select(hand => hand with { Most = 0.01 }).ToList();
        Assert.All(RecipePlanner.Plan(job with { Salts = few }).Lines, line => Assert.True(line.Mass <= 0.01 + 1e-15));
    }

    [Fact]
    public void A_scale_too_coarse_for_a_trace_gets_a_batch_or_a_dilution_that_cures_it()
    {
        var job = Job("tomato-closed", s_usual) with { Scale = new WeighingScale(0.001) };
        var recipe = RecipePlanner.Plan(job);
        var cure = recipe.Coarse.Single(c => c.Salt.Key == "boric-acid");
        var line = recipe.Lines.Single(l => l.Salt.Key == "boric-acid");
        Assert.Equal(0.010, cure.Weigh, 1e-12);
        // The dose out of the bottle holds what was to be weighed, within the step of the measure.
        Assert.Equal(line.Mass, cure.Weigh / cure.Into * cure.Take!.Value, 0.05 * line.Mass);
        var batch = RecipePlanner.Plan(job with { Volume = cure.SmallestBatch * 1.001 });
        Assert.DoesNotContain(batch.Coarse, c => c.Salt.Key == "boric-acid");
    }

    [Fact]
    public void A_dilution_takes_so_much_water_that_the_salt_dissolves()
    {
        // Ten steps of 10 g do not dissolve in one litre: of boric acid 49 g do, and we ask for a fifth to spare.
        var job = Job("tomato-closed", s_usual) with
        {
            Scale = new WeighingScale(0.01),
            Volume = 1,
        };
        var cure = RecipePlanner.Plan(job).Coarse.Single(c => c.Salt.Key == "boric-acid");
        Assert.Equal(0.1, cure.Weigh, 1e-12);
        Assert.Equal(0.8 * 49, cure.Weigh / cure.Into, 0.1);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_volume_of_nothing_is_refused(double volume) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RecipePlanner.Plan(Job("steiner") with { Volume = volume }));
}
