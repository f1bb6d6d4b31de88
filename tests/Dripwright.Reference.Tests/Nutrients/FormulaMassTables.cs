using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Reference.Tests.Nutrients;

// Sums of the IUPAC 2021 atomic masses (CIAAW, Prohaska et al. 2022) made with another program; percents agree with the
// grades printed on labels.
public sealed class FormulaMassTables
{
    [Theory]
    [InlineData("Ca(NO3)2.4H2O", 236.146, "Ca 16.972 N 11.863")]
    [InlineData("Ca(NO3)2", 164.086, "Ca 24.425 N 17.073")]
    [InlineData("5Ca(NO3)2.NH4NO3.10H2O", 1080.623, "Ca 18.544 N 15.554")]
    [InlineData("KNO3", 101.102, "K 38.672 N 13.854")]
    [InlineData("KH2PO4", 136.084, "K 28.731 P 22.761")]
    [InlineData("K2HPO4", 174.174, "K 44.895 P 17.783")]
    [InlineData("K2SO4", 174.252, "K 44.875 S 18.399")]
    [InlineData("KCl", 74.548, "K 52.447 Cl 47.553")]
    [InlineData("MgSO4.7H2O", 246.466, "Mg 9.861 S 13.008")]
    [InlineData("Mg(NO3)2.6H2O", 256.403, "Mg 9.479 N 10.926")]
    [InlineData("NH4H2PO4", 115.025, "N 12.177 P 26.928")]
    [InlineData("NH4NO3", 80.043, "N 34.999")]
    [InlineData("CaCl2.2H2O", 147.008, "Ca 27.262 Cl 48.229")]
    [InlineData("CaCl2", 110.978, "Ca 36.113 Cl 63.887")]
    [InlineData("MnSO4.H2O", 169.009, "Mn 32.506 S 18.969")]
    [InlineData("MnCl2.4H2O", 197.898, "Mn 27.761 Cl 35.827")]
    [InlineData("ZnSO4.7H2O", 287.541, "Zn 22.738")]
    [InlineData("ZnSO4.H2O", 179.451, "Zn 36.433")]
    [InlineData("CuSO4.5H2O", 249.677, "Cu 25.451 S 12.841")]
    [InlineData("H3BO3", 61.831, "B 17.483")]
    [InlineData("Na2B4O7.10H2O", 381.363, "B 11.338 Na 12.057")]
    [InlineData("Na2MoO4.2H2O", 241.956, "Mo 39.656 Na 19.003")]
    [InlineData("FeSO4.7H2O", 278.006, "Fe 20.088")]
    [InlineData("FeNaC10H12N2O8", 367.05, "Fe 15.21")]
    [InlineData("FeNaC10H12N2O8.3H2O", 421.09, "Fe 13.26")]
    [InlineData("C14H19FeN3NaO10", 468.15, "Fe 11.93")]
    [InlineData("C18H16FeN2NaO6", 435.17, "Fe 12.83")]
    [InlineData("KOH", 56.105, "K 69.69")]
    [InlineData("KHCO3", 100.114, "K 39.05")]
    [InlineData("K2CO3", 138.204, "K 56.58")]
    [InlineData("CaSO4.2H2O", 172.164, "")]
    [InlineData("CaHPO4.2H2O", 172.086, "")]
    [InlineData("CaCO3", 100.086, "")]
    [InlineData("HNO3", 63.012, "N 22.229")]
    [InlineData("H3PO4", 97.994, "P 31.608")]
    [InlineData("H2SO4", 98.072, "S 32.690")]
    public void Masses_and_percents_are_those_of_the_table(string formula, double gramsPerMole, string percents)
    {
        var read = Formula.Parse(formula);
        Assert.Equal(gramsPerMole, read.MolarMass * 1000, 0.02);
        var parts = percents.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < parts.Length; i += 2)
        {
            var percent = double.Parse(parts[i + 1], System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(percent, read.MassFraction(parts[i]) * 100, 0.02);
        }
    }

    // P2O5 and K2O: N. Mattson, e-GRO Edible Alert 2018, prints 0.4364 and 0.8301; the rest from the IUPAC masses.
    [Theory]
    [InlineData(Constituent.Phosphorus, "P2O5", 0.43643, 0.0001)]
    [InlineData(Constituent.Potassium, "K2O", 0.83015, 0.0001)]
    [InlineData(Constituent.Calcium, "CaO", 0.71470, 0.0001)]
    [InlineData(Constituent.Magnesium, "MgO", 0.60304, 0.0001)]
    [InlineData(Constituent.Sulfur, "SO3", 0.40046, 0.0001)]
    public void An_oxide_holds_the_share_of_its_element(Constituent element, string oxide, double share, double room)
    {
        Assert.Equal(share, Forms.MassPerMole(element) / Forms.MassPerMole(element, oxide), room);
    }

    [Theory]
    [InlineData(Constituent.NitrateNitrogen, "NO3", 4.4266)]
    [InlineData(Constituent.AmmoniumNitrogen, "NH4", 1.2879)]
    [InlineData(Constituent.Phosphorus, "PO4", 3.0661)]
    [InlineData(Constituent.Sulfur, "SO4", 2.9961)]
    public void An_ion_weighs_so_many_times_its_element(Constituent element, string ion, double times)
    {
        Assert.Equal(times, Forms.MassPerMole(element, ion) / Forms.MassPerMole(element), 0.001);
    }

    [Fact]
    public void Alkalinity_as_carbonate_and_as_bicarbonate()
    {
        Assert.Equal(50.043, Forms.CarbonateEquivalent * 1000, 0.05);
        Assert.Equal(1.2193, Formula.Parse("HCO3").MolarMass / Forms.CarbonateEquivalent, 0.0012);
    }
}
