using Dripwright.Engine.Catalogue.Salts;

namespace Dripwright.Reference.Tests.Nutrients;

public sealed class SolubilityTables
{
    // g per L of water at 20 °C: Department of Agriculture Western Australia, liquid fertiliser stock solutions, Table 1, 2015;
    // KH2PO4 from an encyclopedia article, NH4H2PO4 from a published table. The hydrates stand there as dry salts.
    [Theory]
    [InlineData("ammonium-nitrate", 80.043, 1902)]
    [InlineData("calcium-nitrate-dry", 164.086, 1290)]
    [InlineData("calcium-nitrate-4h2o", 164.086, 1290)]
    [InlineData("potassium-chloride", 74.548, 340)]
    [InlineData("magnesium-sulfate-7h2o", 120.361, 330)]
    [InlineData("potassium-nitrate", 101.102, 316)]
    [InlineData("monopotassium-phosphate", 136.084, 226)]
    [InlineData("monoammonium-phosphate", 115.025, 374)]
    [InlineData("potassium-sulfate", 174.252, 111)]
    [InlineData("boric-acid", 61.831, 49)]
    public void At_twenty_degrees(string key, double gramsPerMole, double gramsPerKilogramWater)
    {
        var found = SaltCatalogue.Default[key].Solubility!.At(293.15);
        Assert.False(found.Beyond);
        Assert.Equal(gramsPerKilogramWater, found.Molality * gramsPerMole, 0.001 * gramsPerKilogramWater);
    }
}
