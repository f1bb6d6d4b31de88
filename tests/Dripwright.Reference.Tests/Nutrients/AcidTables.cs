using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Reference.Tests.Nutrients;

// Densities after Laliberté and Cooper with published coefficients; mol/L and doses follow from the IUPAC masses.
public sealed class AcidTables
{
    [Theory]
    [InlineData("nitric-acid-38", 7.435, Constituent.NitrateNitrogen, 104.1, 134.5)]
    [InlineData("nitric-acid-54", 11.433, Constituent.NitrateNitrogen, 160.1, 87.5)]
    [InlineData("nitric-acid-60", 13.02, Constituent.NitrateNitrogen, 182.4, 76.8)]
    [InlineData("nitric-acid-65", 14.35, Constituent.NitrateNitrogen, 201.0, 69.7)]
    [InlineData("phosphoric-acid-59", 8.525, Constituent.Phosphorus, 264.0, 117.3)]
    [InlineData("phosphoric-acid-75", 12.063, Constituent.Phosphorus, 373.6, 82.9)]
    [InlineData("phosphoric-acid-85", 14.651, Constituent.Phosphorus, 453.8, 68.3)]
    [InlineData("sulfuric-acid-35", 4.500, Constituent.Sulfur, 144.3, 111.1)]
    public void Strength_and_dose_are_those_of_the_table(
        string key,
        double molesPerLitre,
        Constituent element,
        double gramsPerLitre,
        double millilitresPerMole
    )
    {
        var acid = SaltCatalogue.Default[key];
        Assert.Equal(molesPerLitre, acid.Molarity!.Value / 1000, 0.005 * molesPerLitre);
        Assert.Equal(gramsPerLitre, acid.MassFraction(element) * acid.Density!.Value, 0.005 * gramsPerLitre);
        Assert.Equal(millilitresPerMole, acid.VolumeFor(1)!.Value * 1e6, 0.005 * millilitresPerMole);
    }

    private const double CubicMetresPerOunce = 29.5735e-6;
    private const double Hundred = 0.3785412;

    // A substrate maker's table of acid choices (35 % sulfuric): 50 ppm CaCO3 out of 100 US gal takes 1.42 fl oz and adds 16.1 ppm S.
    [Fact]
    public void Sulfuric_acid_against_fifty_parts_of_carbonate()
    {
        var acid = SaltCatalogue.Default["sulfuric-acid-35"];
        var charge = 0.050 / Forms.CarbonateEquivalent;
        var volume = acid.VolumeFor(charge * Hundred)!.Value;
        Assert.Equal(1.42, volume / CubicMetresPerOunce, 0.005 * 1.42);
        var sulfur = volume * acid.Density!.Value * acid.MassFraction(Constituent.Sulfur) / Hundred * 1000;
        Assert.Equal(16.1, sulfur, 0.01 * 16.1);
    }

    // UMass Extension fact sheet on adjusting alkalinity, as copied: 93 % sulfuric acid of s.g. 1.835, 1 fl oz in 100 US gal removes
    // 136.0 ppm CaCO3 and adds 43.6 ppm S.
    [Fact]
    public void Strong_sulfuric_acid_by_the_ounce()
    {
        var acid = CatalogueReader
            .Read(
                """{"salts":[{"key":"a","name":"a","kind":"acid","formula":"H2SO4","purity":"93 %","massOfLitre":"1.835 kg","source":"s"}]}"""u8,
                "f",
                PartsCatalogue.Default
            )
            .Catalogue!.Salts["a"];
        var mass = CubicMetresPerOunce * acid.Density!.Value / Hundred;
        Assert.Equal(136.0, mass * acid.AcidEquivalents * Forms.CarbonateEquivalent * 1000, 0.005 * 136);
        Assert.Equal(43.6, mass * acid.MassFraction(Constituent.Sulfur) * 1000, 0.005 * 43.6);
    }

    // A published worked example: 65 % nitric acid of density 1.40, bicarbonate 2.6 of which 0.7 stays, 1000 L: 131.5 mL.
    [Fact]
    public void Nitric_acid_for_a_cubic_metre()
    {
        var acid = SaltCatalogue.Default["nitric-acid-65"];
        Assert.Equal(131.5, acid.VolumeFor(2.6 - 0.7)!.Value * 1e6, 0.02 * 131.5);
    }
}
