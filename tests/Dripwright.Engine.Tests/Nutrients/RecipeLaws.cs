using CsCheck;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class RecipeLaws
{
    private static readonly Salt[] s_salts = [.. SaltCatalogue.Default.Salts.Values];
    private static readonly NutrientTarget[] s_targets = [.. TargetCatalogue.Default.Targets.Values];

    private static readonly Gen<WaterSupply> s_waters = Gen.Select(
            Gen.Double[0, 3],
            Gen.Double[0, 1],
            Gen.Double[0, 2],
            Gen.Double[0, 2],
            Gen.Double[0, 6]
        )
        .Select(
            (ca, mg, na, s, alkalinity) =>
                new WaterSupply(
                    Phrase.Plain("water"),
                    Composition.Of(
                        (Constituent.Calcium, ca),
                        (Constituent.Magnesium, mg),
                        (Constituent.Sodium, na),
                        (Constituent.Sulfur, s)
                    ),
                    alkalinity
                )
        );

    private static readonly Gen<RecipeJob> s_jobs = Gen.Select(
            s_waters,
            Gen.Int[0, s_targets.Length - 1],
            Gen.Shuffle(s_salts),
            Gen.Int[0, 20],
            Gen.Double[0.01, 100].Array[s_salts.Length],
            Gen.Double[0, 0.2]
        )
        .Select(
            (water, target, shuffled, count, prices, share) =>
                new RecipeJob
                {
                    Water = water,
                    Target = s_targets[target],
                    Salts =
                    [
                        .. shuffled
                            .Take(count)
                            .Select((salt, i) => new SaltAtHand(salt with { Pack = 1, Price = (decimal)prices[i] })),
                    ],
                    MostAmmoniumShare = share,
                    MostChloride = 2,
                }
        );

    private static double Mass(NutrientRecipe recipe) => recipe.Lines.Sum(line => line.Concentration);

    [Fact]
    public void What_the_salts_and_the_water_bring_is_what_the_feed_holds() =>
        s_jobs.Holds(
            job =>
            {
                var recipe = RecipePlanner.Plan(job);
                Assert.True(recipe.Optimal);
                Assert.All(recipe.Lines, line => Assert.True(line.Concentration > 0));
                foreach (var key in Composition.Constituents)
                {
                    var sum =
                        job.Water.Composition[key]
                        + recipe.Lines.Sum(line => line.Salt.Brings[key] * line.Concentration);
                    Assert.Equal(sum, recipe.Composition[key], 1e-9 * (1 + sum));
                }
            },
            iter: 300
        );

    [Fact]
    public void Neutral_salts_and_acid_make_a_feed_whose_charges_close()
    {
        // Labels are rounded and chelates keep their ligand to themselves, so only pure compounds close to the last digit.
        var pure = s_salts
            .Where(salt => salt.Label.Count == 0 && RecipeModel.AcidOf(salt) == salt.AcidEquivalents)
            .ToArray();
        Gen.Select(Gen.Shuffle(pure), Gen.Int[1, 15], Gen.Int[0, s_targets.Length - 1], Gen.Double[0, 6])
            .Holds(
                (salts, count, target, alkalinity) =>
                {
                    // Water of sodium bicarbonate: what acid takes of the alkalinity, nitrate or phosphate takes over.
                    var water = new WaterSupply(
                        Phrase.Plain("water"),
                        Composition.Of((Constituent.Sodium, alkalinity)),
                        alkalinity
                    );
                    var recipe = RecipePlanner.Plan(
                        new RecipeJob
                        {
                            Water = water,
                            Target = s_targets[target],
                            Salts = [.. salts.Take(count).Select(salt => new SaltAtHand(salt))],
                        }
                    );
                    var charge = Composition.Constituents.Sum(key => Charges.Of(key) * recipe.Composition[key]);
                    Assert.Equal(recipe.Alkalinity, charge, 1e-6);
                },
                iter: 300
            );
    }

    [Fact]
    public void Limits_hold() =>
        s_jobs.Holds(
            job =>
            {
                var recipe = RecipePlanner.Plan(job);
                Assert.True(recipe.AmmoniumShare <= job.MostAmmoniumShare + 1e-6);
                Assert.True(recipe.Composition[Constituent.Chloride] <= job.MostChloride + 1e-9);
                Assert.True(recipe.AcidGiven <= recipe.AcidDemand + 1e-6);
            },
            iter: 300
        );

    [Fact]
    public void The_order_of_the_salts_does_not_matter() =>
        s_jobs.Holds(
            job =>
            {
                var one = RecipePlanner.Plan(job);
                var other = RecipePlanner.Plan(job with { Salts = [.. job.Salts.Reverse()] });
                Assert.Equal(
                    one.Lines.Select(line => (line.Salt.Key, line.Mass)),
                    other.Lines.Select(line => (line.Salt.Key, line.Mass))
                );
            },
            iter: 200
        );

    [Fact]
    public void A_salt_more_at_hand_never_fits_worse() =>
        Gen.Select(s_jobs, Gen.Int[0, s_salts.Length - 1])
            .Holds(
                (job, more) =>
                {
                    // Another acid may meet a demand that was not met, which the fit has to pay for.
                    if (RecipeModel.AcidOf(s_salts[more]) != 0)
                    {
                        return;
                    }
                    var before = RecipePlanner.Plan(job).Misfit;
                    var after = RecipePlanner.Plan(job with { Salts = [.. job.Salts, new SaltAtHand(s_salts[more])] });
                    Assert.True(after.Misfit <= before + 1e-8 * (1 + before));
                },
                iter: 300
            );

    [Fact]
    public void A_higher_price_is_never_cheaper_and_never_changes_the_fit() =>
        Gen.Select(s_jobs, Gen.Int[0, 19], Gen.Double[1, 10])
            .Holds(
                (job, which, times) =>
                {
                    if (which >= job.Salts.Count)
                    {
                        return;
                    }
                    var before = RecipePlanner.Plan(job);
                    var dearer = job.Salts[which].Salt;
                    dearer = dearer with { Price = dearer.Price * (decimal)times };
                    var after = RecipePlanner.Plan(
                        job with
                        {
                            Salts = [.. job.Salts.Select((hand, i) => i == which ? new SaltAtHand(dearer) : hand)],
                        }
                    );
                    Assert.True(after.Cost >= before.Cost * 0.9999999m);
                    Assert.Equal(before.Misfit, after.Misfit, 1e-7 * (1 + before.Misfit));
                },
                iter: 300
            );

    [Fact]
    public void Twice_the_target_takes_twice_the_salts_and_twice_the_volume_twice_the_mass() =>
        s_jobs.Holds(
            job =>
            {
                var still = job with { Water = WaterSupply.Pure, MostChloride = null };
                var once = RecipePlanner.Plan(still);
                // Wishes for nothing are held against a fixed amount, so only targets without them scale.
                if (still.Target.Wanted.Values.Contains(0))
                {
                    return;
                }
                var doubled = still.Target with
                {
                    Wanted = still.Target.Wanted.ToDictionary(pair => pair.Key, pair => 2 * pair.Value),
                };
                var twice = RecipePlanner.Plan(still with { Target = doubled });
                Assert.Equal(2 * Mass(once), Mass(twice), 1e-6 * (1 + Mass(once)));
                Assert.Equal(once.Misfit, twice.Misfit, 1e-7);
                var larger = RecipePlanner.Plan(still with { Volume = 2 * still.Volume });
                Assert.Equal(
                    2 * once.Lines.Sum(line => line.Mass),
                    larger.Lines.Sum(line => line.Mass),
                    1e-9 * (1 + Mass(once))
                );
            },
            iter: 200
        );

    [Fact]
    public void Rounding_moves_no_weight_by_more_than_half_a_step() =>
        s_jobs.Holds(
            job =>
            {
                foreach (var line in RecipePlanner.Plan(job).Lines)
                {
                    var step = line.Salt.Density is { } density ? density * job.Scale.MeasureStep : job.Scale.Step;
                    Assert.True(Math.Abs(line.Weighed - line.Mass) <= step / 2 * (1 + 1e-9));
                }
            },
            iter: 100
        );
}
