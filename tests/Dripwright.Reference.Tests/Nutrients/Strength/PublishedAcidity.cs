using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Tests.Nutrients.Strength;

namespace Dripwright.Reference.Tests.Nutrients.Strength;

/// <summary>Constants, acid doses of extension tables, and an independent code's titrations of one hard water.</summary>
public class PublishedAcidity(ITestOutputHelper output)
{
    // Acid bottles per litre, from densities of the Laliberté and Cooper correlation (coefficients in a public library).
    private static PhBottle Nitric(double molesPerLitre) =>
        new("nitric acid", Composition.Of((Constituent.NitrateNitrogen, molesPerLitre * 1000)));

    private static PhBottle Phosphoric(double molesPerLitre) =>
        new("phosphoric acid", Composition.Of((Constituent.Phosphorus, molesPerLitre * 1000)));

    [Theory]
    [InlineData(5, 6.516, 10.554, -1.192)]
    [InlineData(10, 6.463, 10.488, -1.269)]
    [InlineData(15, 6.419, 10.428, -1.341)]
    [InlineData(20, 6.382, 10.376, -1.407)]
    [InlineData(25, 6.352, 10.329, -1.468)]
    [InlineData(30, 6.328, 10.288, -1.524)]
    public void Carbonate_constants_of_Plummer_and_Busenberg(double celsius, double pk1, double pk2, double henry)
    {
        var kelvin = celsius + 273.15;
        Assert.Equal(pk1, -CarbonateConstants.LogK1(kelvin), 0.001);
        Assert.Equal(pk2, -CarbonateConstants.LogK2(kelvin), 0.001);
        Assert.Equal(henry, CarbonateConstants.LogHenry(kelvin), 0.001);
    }

    [Theory]
    [InlineData(5.0, 1.005)]
    [InlineData(5.5, 1.019)]
    [InlineData(5.8, 1.038)]
    [InlineData(6.0, 1.060)]
    [InlineData(6.5, 1.167)]
    [InlineData(7.0, 1.388)]
    public void Charge_of_phosphate_when_all_is_dilute(double ph, double published)
    {
        // From pK 2.148, 7.198, 12.375 (minteq.v4, USGS); the pK used here are 2.168, 7.207, 12.346, so 0.005.
        var trace = Speciation.At(Composition.Of((Constituent.Phosphorus, 1e-4)), ph, SolutionConditions.Closed);
        var charge =
            (trace.Concentration("H2PO4") + (2 * trace.Concentration("HPO4")) + (3 * trace.Concentration("PO4")))
            / 1e-4;
        Assert.Equal(published, charge, 0.006);
    }

    [Theory]
    [InlineData(6.5, 1.467, 2.533)]
    [InlineData(6.0, 2.634, 1.366)]
    [InlineData(5.8, 3.021, 0.979)]
    [InlineData(5.5, 3.447, 0.553)]
    public void Acid_for_hard_water_with_activities(double ph, double reference, double left)
    {
        // PHREEQC 3.8.9, USGS; 2 % between its activities and ours.
        var water = Water();
        var acid = Titration.AcidTo(water, ph, SolutionConditions.Closed);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"pH {ph}: {acid:0.000} against {reference}"));
        Assert.Equal(reference, acid, 0.02 * reference);
        var after = water + Composition.Of((Constituent.Chloride, acid));
        Assert.Equal(left, Speciation.At(after, ph, SolutionConditions.Closed).Alkalinity, 0.03);
    }

    [Fact]
    public void An_aired_tank_takes_a_third_more_acid() =>
        // PHREEQC, log pCO2 = -3.4: 3.998 meq/L to pH 5.8.
        Assert.Equal(
            3.998,
            Titration.AcidTo(Water(), 5.8, new SolutionConditions { CarbonDioxide = 101325 * Math.Pow(10, -3.4) }),
            0.01
        );

    [Fact]
    public void Cold_water_takes_a_little_more_acid() =>
        // PHREEQC at 15 °C, closed: 3.124 meq/L to pH 5.8.
        Assert.Equal(3.124, Titration.AcidTo(Water(15), 5.8, new SolutionConditions { Celsius = 15 }), 0.02 * 3.124);

    [Fact]
    public void Phosphoric_acid_gives_a_little_more_than_one_proton()
    {
        // PHREEQC: 2.824 mmol/L of phosphoric acid to pH 5.8, 1.07 eq/mol.
        var dose = Dose(Phosphoric(12.063), 0.2, 5.8);
        Assert.Equal(2.824, dose.Added[Constituent.Phosphorus], 0.02 * 2.824);
    }

    [Theory]
    [InlineData(13.02, 46.4, 42.3)]
    [InlineData(7.435, 81.3, 42.3)]
    public void Nitric_acid_for_a_200_litre_tank(double molesPerLitre, double millilitres, double nitrogen)
    {
        // 604 meq, from the activity-corrected 3.021 meq/L above; 60 % and 38 % nitric acid.
        var dose = Dose(Nitric(molesPerLitre), 0.2, 5.8);
        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{dose.Millilitres:0.0} mL against {millilitres}")
        );
        Assert.Equal(millilitres, dose.Millilitres, 0.02 * millilitres);
        Assert.Equal(nitrogen, dose.Added[Constituent.NitrateNitrogen] * 14.007, 0.02 * nitrogen);
        Assert.Contains(dose.Cautions, c => c.Key == "tank.caution.acid-into-water");
    }

    [Fact]
    public void Phosphoric_acid_for_a_200_litre_tank()
    {
        var dose = Dose(Phosphoric(12.063), 0.2, 5.8);
        Assert.Equal(46.8, dose.Millilitres, 0.02 * 46.8);
        Assert.Equal(87.5, dose.Added[Constituent.Phosphorus] * 30.974, 0.02 * 87.5);
    }

    [Fact]
    public void Sulfuric_acid_of_35_per_cent_takes_50_ppm_off_100_gallons()
    {
        // A substrate maker's page on acid choices, Table 1: 1.42 fl oz, which adds 16.1 ppm of sulfur.
        var bottle = new PhBottle("sulfuric acid 35 %", Composition.Of((Constituent.Sulfur, 4500)));
        var volume = 0.3785412 * (50 / 50.043) / bottle.Equivalents;
        Assert.Equal(1.42, volume / 29.5735e-6, 0.005 * 1.42);
        Assert.Equal(16.1, volume * 4500 * 32.06 / 0.3785412, 0.01 * 16.1);
    }

    [Fact]
    public void Phosphoric_acid_of_75_per_cent_an_ounce_table()
    {
        // The same table: 0.94 fl oz in 100 gal takes 50 ppm off and adds 27.5 ppm of phosphorus. At one proton each it
        // takes 44.3 ppm off, so the table reckons with 1.13: what phosphoric acid gives near pH 6.35.
        var bottle = Phosphoric(12.063);
        var added = 0.94 * 29.5735e-6 * 12063 / 0.3785412;
        Assert.Equal(27.5, added * 30.974, 0.01 * 27.5);
        Assert.Equal(44.3, added * bottle.Equivalents / 12063 * 50.043, 0.01 * 44.3);
        var divided = Speciation.At(
            Composition.Of((Constituent.Phosphorus, added), (Constituent.Sodium, 1)),
            6.35,
            SolutionConditions.Closed
        );
        Assert.Equal(1.13, (divided.Alkalinity / added) + 1, 0.03);
    }

    [Fact]
    public void Sulfuric_acid_of_93_per_cent_an_ounce_in_100_gallons()
    {
        // University of Massachusetts fact sheet on acids, Table, second-hand copy: 136.0 ppm off, 43.6 ppm of sulfur.
        var molar = 0.93 * 1.835e6 / 98.072;
        var bottle = new PhBottle("sulfuric acid 93 %", Composition.Of((Constituent.Sulfur, molar)));
        var off = 29.5735e-6 * bottle.Equivalents / 0.3785412;
        Assert.Equal(136.0, off * 50.043, 0.005 * 136);
        Assert.Equal(43.6, off / 2 * 32.06, 0.005 * 43.6);
        // Same sheet, 250 to 150 mg/L CaCO3 in 100 gal: 23 mL, from a factor it rounds up; the exact one gives 21.7.
        Assert.Equal(23, 0.3785412 * (100 / 50.043) / bottle.Equivalents * 1e6, 0.06 * 23);
    }

    [Fact]
    public void Nitric_acid_of_65_per_cent_leaves_a_buffer()
    {
        // A Polish fertigation text (zanotowane.pl): HCO3 2.6, leave 0.7 me/L, 1000 L: 131.5 mL at density 1.40.
        var bottle = Nitric(0.65 * 1400 / 63.012);
        Assert.Equal(131.5, (2.6 - 0.7) / bottle.Equivalents * 1e6, 0.02 * 131.5);
    }

    private static Composition Water(double celsius = 25) =>
        Titration.WithCarbon(Solutions.Water, 4, 7.6, new SolutionConditions { Celsius = celsius });

    private static PhDose Dose(PhBottle bottle, double volume, double ph) =>
        PhDosing.ToReach(Water(), volume, ph, bottle, SolutionConditions.Closed).Value!;
}
