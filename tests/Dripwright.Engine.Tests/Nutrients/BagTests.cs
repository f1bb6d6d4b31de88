using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Planning;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class BagTests
{
    // The label of the double salt: 14.4 % nitrate and 1.1 % ammonium nitrogen (from memory).
    [Fact]
    public void Nitrogen_without_forms_beside_calcium_splits_as_such_labels_state_it()
    {
        var salt = BagLabel.Salt(new NutrientBag { N = 0.155, Ca = 0.19 }, 1);
        Assert.Equal(0.144, salt.MassFraction(Constituent.NitrateNitrogen), 0.001);
        Assert.Equal(0.011, salt.MassFraction(Constituent.AmmoniumNitrogen), 0.001);
        Assert.Equal(0, salt.AcidEquivalents);
        Assert.Equal(StockPart.A, salt.Part);
    }

    [Fact]
    public void Phosphate_and_potash_are_counted_as_the_label_means_them()
    {
        var salt = BagLabel.Salt(
            new NutrientBag
            {
                N = 0.04,
                P2o5 = 0.18,
                K2o = 0.38,
            },
            1
        );
        Assert.Equal(0.18 * 0.43643, salt.MassFraction(Constituent.Phosphorus), 1e-5);
        Assert.Equal(0.38 * 0.83015, salt.MassFraction(Constituent.Potassium), 1e-5);
    }

    [Fact]
    public void Charges_of_any_label_close()
    {
        var share = Gen.Double[0, 0.15];
        Gen.Select(share, share, share, share, share)
            .Holds(one =>
            {
                var bag = new NutrientBag
                {
                    N = one.Item1,
                    P2o5 = one.Item2,
                    K2o = one.Item3,
                    Ca = one.Item4,
                    Mg = one.Item5,
                };
                var salt = BagLabel.Salt(bag, 1);
                var open = Charges.Anions(salt.Brings) - Charges.Cations(salt.Brings);
                Assert.InRange(open - salt.AcidEquivalents, -1e-9, 0.1 * Charges.Anions(salt.Brings) + 1e-9);
            });
    }

    [Theory]
    [InlineData("""{ "n": "10 %", "ureaN": "12 %" }""")]
    [InlineData("""{ "ca": "10 %", "cao": "14 %" }""")]
    [InlineData("""{ "name": "nothing" }""")]
    public void A_label_that_cannot_be_is_a_fault_of_its_bag(string bag)
    {
        var reading = RigReader.Read(
            $$"""{ "nutrients": { "crop": "tomato", "bags": [{{bag}}] } }""",
            "a",
            PartsCatalogue.Default
        );
        Assert.Equal("nutrients.bags[0]", Assert.Single(reading.Faults).Path);
    }

    [Fact]
    public void One_premix_is_named_for_all_traces_and_one_salt_for_what_the_bag_lacks()
    {
        var plan = Plans.From(
            """{ "nutrients": { "crop": "tomato", "bags": [ { "n": "4 %", "p2o5": "18 %", "k2o": "38 %", "mg": "0.5 %" } ] } }"""
        );
        var cures = plan.Nutrients!.Cures;
        Assert.Equal("calcium-nitrate-15.5", cures.Single(cure => cure.Constituent == Constituent.Calcium).Salt.Key);
        Assert.All(
            cures.Where(cure => Charges.IsTrace(cure.Constituent)),
            cure => Assert.Equal("trace-premix", cure.Salt.Key)
        );
    }
}
