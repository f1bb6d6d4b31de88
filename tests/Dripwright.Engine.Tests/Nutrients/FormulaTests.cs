using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class FormulaTests
{
    [Theory]
    [InlineData("Ca(NO3)2·4H2O", "Ca(NO3)2.4H2O")]
    [InlineData("Ca(NO3)2*4H2O", "Ca(NO3)2.4H2O")]
    [InlineData("Ca(NO₃)₂·4H₂O", "Ca(NO3)2.4H2O")]
    [InlineData("Ca[NO3]2{H2O}4", "Ca(NO3)2.4H2O")]
    [InlineData("((NH4)2SO4)3", "(NH4)6S3O12")]
    [InlineData("CaSO4.0.5H2O", "Ca2S2O8.H2O", 0.5)]
    [InlineData("CaSO4·½H2O", null)]
    [InlineData("Fe0.95O", "Fe19O20", 0.05)]
    public void The_same_compound_written_otherwise_weighs_the_same(string one, string? other, double times = 1)
    {
        var read = Formula.Read(one).Formula;
        if (other is null)
        {
            Assert.Null(read);
        }
        else
        {
            Assert.Equal(Formula.Parse(other).MolarMass * times, read!.MolarMass, 1e-12);
        }
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("Ca(NO3", 7)]
    [InlineData("Ca(NO3]2", 7)]
    [InlineData("CaX", 3)]
    [InlineData("ca", 1)]
    [InlineData("Ca()", 4)]
    [InlineData("Ca0", 3)]
    [InlineData("Ca.", 4)]
    [InlineData("SO4--", 4)]
    [InlineData("Ca99999", 3)]
    public void A_fault_says_at_which_character(string text, int position)
    {
        var reading = Formula.Read(text);
        Assert.Null(reading.Formula);
        Assert.Equal(position, reading.Fault!.Value.Position);
    }

    [Fact]
    public void Any_text_gives_a_formula_or_a_fault() =>
        Gen.Char["CaHNOPSK()[]{}.·*0123456789 ₂Mgx"]
            .Array[0, 130]
            .Holds(
                letters =>
                {
                    var reading = Formula.Read(new string(letters));
                    return reading.Formula is null != reading.Fault is null
                        && (reading.Formula is null || double.IsFinite(reading.Formula.MolarMass));
                },
                iter: 20_000
            );

    [Fact]
    public void Element_shares_add_up_to_the_whole() =>
        Gen.OneOf("Ca(NO3)2·4H2O", "5Ca(NO3)2·NH4NO3·10H2O", "(NH4)6Mo7O24·4H2O", "C14H19FeN3NaO10")
            .Holds(text =>
            {
                var formula = Formula.Parse(text);
                Assert.Equal(1, formula.Atoms.Keys.Sum(formula.MassFraction), 1e-12);
            });

    [Fact]
    public void Milligrams_and_moles_go_both_ways() =>
        Gen.Select(Gen.Int[0, Composition.Constituents.Count - 1], Gen.Double[0, 1e4])
            .Holds(
                (index, milligrams) =>
                {
                    var key = Composition.Constituents[index];
                    var there = Forms.FromMilligramsPerLitre(key, milligrams);
                    Assert.Equal(milligrams, Forms.ToMilligramsPerLitre(key, there), 1e-9 * (1 + milligrams));
                }
            );

    [Fact]
    public void A_form_without_the_element_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Forms.MassPerMole(Constituent.Phosphorus, "K2O"));
}
