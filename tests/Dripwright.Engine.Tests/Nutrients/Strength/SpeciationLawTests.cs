using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;

namespace Dripwright.Engine.Tests.Nutrients.Strength;

public class SpeciationLawTests
{
    [Fact]
    public void Every_constituent_is_accounted_for_at_any_pH() =>
        Gen.Select(Generated.Solution, Gen.Double[1.5, 12])
            .Holds(
                (solution, ph) =>
                {
                    var divided = Speciation.At(solution, ph, SolutionConditions.Closed);
                    AssertTotal(
                        divided,
                        solution[Constituent.Calcium],
                        "Ca",
                        "CaSO4",
                        "CaPO4",
                        "CaHPO4",
                        "CaH2PO4",
                        "CaCO3",
                        "CaHCO3"
                    );
                    AssertTotal(
                        divided,
                        solution[Constituent.Sulfur],
                        "SO4",
                        "HSO4",
                        "CaSO4",
                        "MgSO4",
                        "KSO4",
                        "NaSO4",
                        "NH4SO4",
                        "FeSO4",
                        "MnSO4",
                        "ZnSO4",
                        "CuSO4"
                    );
                    AssertTotal(divided, solution[Constituent.AmmoniumNitrogen], "NH4", "NH3", "NH4SO4");
                    AssertTotal(divided, solution[Constituent.NitrateNitrogen], "NO3");
                    Assert.Equal(solution[Constituent.InorganicCarbon], divided.InorganicCarbon, 1e-9);
                    Assert.All(divided.Species, s => Assert.True(s.Concentration >= 0 && double.IsFinite(s.Activity)));
                },
                iter: 200
            );

    [Fact]
    public void A_solution_at_its_own_pH_carries_no_charge() =>
        Generated.Balanced.Holds(
            solution =>
            {
                foreach (var around in new[] { SolutionConditions.Closed, SolutionConditions.Open })
                {
                    var at = SolutionPh.Of(solution, around);
                    Assert.True(at.Found);
                    Assert.Equal(0, at.Value.Charge, 1e-8);
                }
            },
            iter: 200
        );

    [Fact]
    public void Charge_falls_as_pH_rises() =>
        Gen.Select(Generated.Solution, Gen.Double[1.5, 11], Gen.Double[0.01, 1])
            .Holds(
                (solution, ph, step) =>
                    Assert.True(
                        Speciation.At(solution, ph + step, SolutionConditions.Closed).Charge
                            < Speciation.At(solution, ph, SolutionConditions.Closed).Charge
                    ),
                iter: 200
            );

    [Fact]
    public void Pure_water_is_neutral_and_hardly_conducts()
    {
        var water = SolutionPh.Of(Composition.Nothing, SolutionConditions.Closed).Value!;
        Assert.Equal(7.0, water.PH, 0.005);
        // Pure water at 25 °C: 0.055 µS/cm.
        Assert.Equal(0.055, Conductivity.Of(water).MicrosiemensPerCentimetre, 0.001);
    }

    [Fact]
    public void Rain_in_balance_with_the_air_has_a_pH_of_5_6() =>
        Assert.Equal(5.61, SolutionPh.Of(Composition.Nothing, SolutionConditions.Open).Value!.PH, 0.02);

    [Fact]
    public void An_analysis_that_cannot_be_is_explained()
    {
        var acid = SolutionPh.Of(Composition.Of((Constituent.Chloride, 5000)), SolutionConditions.Closed);
        var lye = SolutionPh.Of(Composition.Of((Constituent.Sodium, 5000)), SolutionConditions.Closed);
        Assert.False(acid.Found);
        Assert.Contains("anions", acid.Refusals[0].What.Told(), StringComparison.Ordinal);
        Assert.False(lye.Found);
        Assert.Contains("cations", lye.Refusals[0].What.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stock_solution_is_refused_not_reckoned()
    {
        var stock = Composition.Of((Constituent.Calcium, 1000), (Constituent.NitrateNitrogen, 2000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Speciation.At(stock, 6, SolutionConditions.Closed));
        Assert.False(SolutionPh.Of(stock, SolutionConditions.Closed).Found);
    }

    [Fact]
    public void Free_iron_counts_as_cation_and_chelated_iron_as_anion()
    {
        var iron = Composition.Of((Constituent.Iron, 1));
        var chelated = Speciation.At(iron, 7, SolutionConditions.Closed).Charge;
        var free = Speciation.At(iron, 7, new SolutionConditions { Iron = IronForm.Ferrous }).Charge;
        Assert.Equal(-1, chelated, 0.001);
        Assert.Equal(2, free, 0.001);
    }

    private static void AssertTotal(Speciation divided, double total, params string[] species) =>
        Assert.Equal(total, species.Sum(divided.Concentration), 1e-9);
}
