using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Tests.Nutrients.Strength;

public class ConductivityLawTests
{
    [Fact]
    public void More_salt_never_lowers_EC() =>
        Gen.Select(Generated.Balanced, Gen.Int[0, 4], Gen.Double[0.01, 3])
            .Holds(
                (solution, which, amount) =>
                {
                    var salt = which switch
                    {
                        0 => Salt(Constituent.Potassium, 1, Constituent.NitrateNitrogen, 1),
                        1 => Salt(Constituent.Calcium, 1, Constituent.NitrateNitrogen, 2),
                        2 => Salt(Constituent.Sodium, 1, Constituent.Chloride, 1),
                        3 => Salt(Constituent.Magnesium, 1, Constituent.Sulfur, 1),
                        _ => Salt(Constituent.Potassium, 1, Constituent.Phosphorus, 1),
                    };
                    Assert.True(
                        Conductivity.Of(solution + (salt * amount), 5.8, SolutionConditions.Closed)
                            > Conductivity.Of(solution, 5.8, SolutionConditions.Closed)
                    );
                },
                iter: 300
            );

    [Fact]
    public void Twice_the_salt_reads_less_than_twice_and_more_than_one_and_a_half_times() =>
        Generated.Balanced.Holds(
            solution =>
            {
                var once = Conductivity.Of(solution, 5.8, SolutionConditions.Closed).DecisiemensPerMetre;
                var twice = Conductivity.Of(solution * 2, 5.8, SolutionConditions.Closed).DecisiemensPerMetre;
                Assert.True(twice <= 2 * once && twice > 1.5 * once);
            },
            iter: 200
        );

    [Fact]
    public void Warmer_conducts_better() =>
        Gen.Select(Generated.Balanced, Gen.Double[0, 35], Gen.Double[0.5, 5])
            .Holds(
                (solution, celsius, warmer) =>
                    Assert.True(
                        Conductivity.Of(solution, 5.8, new SolutionConditions { Celsius = celsius + warmer })
                            > Conductivity.Of(solution, 5.8, new SolutionConditions { Celsius = celsius })
                    ),
                iter: 200
            );

    [Fact]
    public void A_recipe_scaled_to_an_EC_reads_that_EC() =>
        Gen.Select(Generated.Balanced, Gen.Double[0.8, 3.5])
            .Holds(
                (recipe, ec) =>
                {
                    var water = Composition.Of((Constituent.Calcium, 1), (Constituent.InorganicCarbon, 2));
                    var scaled = StrengthScaling.ToEc(water, recipe, new Ec(ec), 5.8);
                    if (scaled.Found)
                    {
                        Assert.Equal(
                            ec,
                            Conductivity.Of(scaled.Value.Solution, 5.8, SolutionConditions.Closed).DecisiemensPerMetre,
                            1e-6
                        );
                    }
                },
                iter: 100
            );

    [Fact]
    public void A_target_below_the_water_is_refused_with_a_remedy()
    {
        var water = Composition.Of((Constituent.Sodium, 20), (Constituent.Chloride, 20));
        var scaled = StrengthScaling.ToEc(water, water, new Ec(1), 5.8);
        Assert.False(scaled.Found);
        Assert.Contains("rain or reverse-osmosis", scaled.Refusals[0].Remedy.Told(), StringComparison.Ordinal);
    }

    private static Composition Salt(Constituent cation, double cations, Constituent anion, double anions) =>
        Composition.Of((cation, cations), (anion, anions));
}
