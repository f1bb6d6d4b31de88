using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Recipe;

namespace Dripwright.Reference.Tests.Nutrients;

// Computed with PHREEQC 3.8.9 of the USGS and its database phreeqc.dat at 25 °C; tolerance 0.15 log units for the choice of pairs.
public sealed class SaturationTables
{
    private static readonly Composition s_hoagland = Composition.Of(
        (Constituent.NitrateNitrogen, 15),
        (Constituent.Phosphorus, 1),
        (Constituent.Potassium, 6),
        (Constituent.Calcium, 5),
        (Constituent.Magnesium, 2),
        (Constituent.Sulfur, 2)
    );

    private static readonly Composition s_rootZone = Composition.Of(
        (Constituent.NitrateNitrogen, 22.5),
        (Constituent.AmmoniumNitrogen, 0.5),
        (Constituent.Phosphorus, 1),
        (Constituent.Potassium, 8),
        (Constituent.Calcium, 10),
        (Constituent.Magnesium, 4.5),
        (Constituent.Sulfur, 6.8)
    );

    [Theory]
    [InlineData(1, 5.8, -1.15, -0.54)]
    [InlineData(1, 6.5, -1.15, 0.00)]
    [InlineData(1, 7.0, -1.16, 0.24)]
    [InlineData(2, 5.8, -0.75, -0.07)]
    [InlineData(4, 5.8, -0.38, 0.36)]
    [InlineData(10, 5.8, 0.09, 0.91)]
    public void Hoagland_one_and_its_concentrates(double times, double ph, double gypsum, double phosphate)
    {
        var found = IonProducts.Of(s_hoagland * times, ph);
        Assert.Equal(gypsum, found.Single(s => s.Solid == Precipitate.Gypsum).SaturationIndex, 0.15);
        Assert.Equal(
            phosphate,
            found.Single(s => s.Solid == Precipitate.CalciumHydrogenPhosphate).SaturationIndex,
            0.15
        );
    }

    [Theory]
    [InlineData(5.8, -0.38)]
    [InlineData(6.5, 0.13)]
    public void Tomato_root_zone(double ph, double phosphate)
    {
        var found = IonProducts.Of(s_rootZone, ph);
        Assert.Equal(-0.52, found.Single(s => s.Solid == Precipitate.Gypsum).SaturationIndex, 0.15);
        Assert.Equal(
            phosphate,
            found.Single(s => s.Solid == Precipitate.CalciumHydrogenPhosphate).SaturationIndex,
            0.15
        );
    }

    // Gypsum in pure water: 14.9 mmol/kg at 25 °C (PHREEQC; handbooks print 2.4 to 2.6 g/L), tolerance 10 %.
    [Fact]
    public void Gypsum_dissolves_in_pure_water_up_to_fifteen_millimoles()
    {
        double Index(double amount) =>
            IonProducts
                .Of(Composition.Of((Constituent.Calcium, amount), (Constituent.Sulfur, amount)), 6)
                .Single()
                .SaturationIndex;
        Assert.True(Index(14.9 * 0.9) < 0);
        Assert.True(Index(14.9 * 1.1) > 0);
    }
}
