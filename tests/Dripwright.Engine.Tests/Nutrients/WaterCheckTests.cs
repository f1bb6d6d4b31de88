using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Waters;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class WaterCheckTests
{
    private static ReportedValue Moles(Constituent constituent, double amount) =>
        ReportedValue.Moles(constituent, amount);

    private static ReportedValue[] Well(double sodium = 0.5, double chloride = 0.5) =>
        [
            ReportedValue.Alkalinity(4),
            Moles(Constituent.Calcium, 1.5),
            Moles(Constituent.Magnesium, 0.5),
            Moles(Constituent.Sodium, sodium),
            Moles(Constituent.Chloride, chloride),
            Moles(Constituent.Sulfur, 0),
            ReportedValue.PH(7.6),
        ];

    [Fact]
    public void An_empty_analysis_is_counted_as_nothing_and_says_so()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Nothing);
        Assert.Empty(reading.Faults);
        Assert.Equal(Composition.Nothing, reading.Supply!.Composition);
        Assert.Contains(reading.Findings, finding => finding.Rule == "water-unknown");
    }

    [Fact]
    public void A_whole_analysis_balances_and_gets_its_carbon()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of(Well()));
        Assert.Empty(reading.Faults);
        Assert.True(reading.Balance!.Complete);
        Assert.Equal(0, reading.Balance.Gap, 1e-12);
        Assert.Equal("inorganic carbon", Assert.Single(reading.Completions).What.Told());
        Assert.InRange(reading.Supply!.Composition[Constituent.InorganicCarbon], 4.0, 4.3);
        Assert.Contains(reading.Findings, finding => finding.Rule == "water-alkalinity");
    }

    [Fact]
    public void One_missing_ion_follows_from_the_charges()
    {
        var values = Well()
            .Where(value => value.Constituent != Constituent.Sodium || value.Quantity != ReportedQuantity.Constituent);
        var reading = WaterCheck.Read(WaterAnalysis.Of(values));
        Assert.Contains(reading.Completions, c => c.What.Told() == "sodium" && Math.Abs(c.Value - 0.5) < 1e-12);
    }

    [Fact]
    public void Two_missing_ions_do_not_follow()
    {
        var reading = WaterCheck.Read(
            WaterAnalysis.Of(
                ReportedValue.Alkalinity(4),
                Moles(Constituent.Calcium, 1.5),
                Moles(Constituent.Magnesium, 0.5)
            )
        );
        Assert.DoesNotContain(reading.Completions, c => c.What.Told() is "sodium" or "chloride" or "sulfate");
        Assert.Equal(["sodium", "chloride", "sulfate"], reading.Balance!.Missing.Select(one => one.Told()));
    }

    [Fact]
    public void Magnesium_is_hardness_less_calcium()
    {
        var reading = WaterCheck.Read(
            WaterAnalysis.Of(ReportedValue.HardnessAsCarbonate(200), Moles(Constituent.Calcium, 1.5))
        );
        Assert.Equal(200 / 100.086 - 1.5, reading.Supply!.Composition[Constituent.Magnesium], 1e-9);
    }

    [Fact]
    public void Hardness_alone_is_split_by_the_usual_share_and_that_is_said()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of(ReportedValue.HardnessInDegrees(10)));
        Assert.Equal(1.783 * 2 / 3, reading.Supply!.Composition[Constituent.Calcium], 0.01);
        Assert.Equal(1.783 / 3, reading.Supply!.Composition[Constituent.Magnesium], 0.01);
        Assert.Equal(2 * 1.783, reading.Balance!.Cations, 0.01);
        Assert.Contains(reading.Findings, finding => finding.Rule == "water-hardness-split");
    }

    [Fact]
    public void A_negative_value_is_explained()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of(Moles(Constituent.Calcium, -1), ReportedValue.PH(70)));
        Assert.Null(reading.Supply);
        Assert.Equal(["nutrients.water.calcium", "nutrients.water.ph"], reading.Faults.Select(fault => fault.Field));
    }

    [Fact]
    public void Alkalinity_without_a_partner_is_explained()
    {
        var reading = WaterCheck.Read(
            WaterAnalysis.Of(
                ReportedValue.AlkalinityAsCarbonate(200),
                ReportedValue.Hardness(0.2),
                Moles(Constituent.Sodium, 0.3)
            )
        );
        Assert.Null(reading.Supply);
        Assert.Contains(
            reading.Faults,
            fault =>
                fault.Field == "nutrients.water.alkalinity"
                && fault.Why.Told().Contains("partner", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(0.1)] // microsiemens taken for something else
    [InlineData(2.0)]
    public void An_EC_far_from_the_ions_is_explained(double decisiemens)
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of([.. Well(), ReportedValue.Conductivity(decisiemens)]));
        Assert.Equal("nutrients.water.conductivity", Assert.Single(reading.Faults).Field);
    }

    [Fact]
    public void An_EC_that_fits_is_left_alone()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of([.. Well(), ReportedValue.Conductivity(0.42)]));
        Assert.Empty(reading.Faults);
        Assert.DoesNotContain(reading.Findings, finding => finding.Rule == "water-ec-off");
    }

    [Fact]
    public void Too_much_sodium_and_chloride_are_named_with_the_blend_that_cures_them()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of(Well(sodium: 6, chloride: 6)));
        Assert.Contains(reading.Findings, finding => finding.Rule == "water-sodium");
        Assert.Contains(reading.Findings, finding => finding.Rule == "water-chloride");
        var share = WaterBlend.ShareOfPure(6, 50 / 22.990);
        var blend = WaterBlend.Of([(reading.Supply!, 1 - share), (WaterSupply.Pure, share)]);
        Assert.Equal(50 / 22.990, blend.Composition[Constituent.Sodium], 1e-9);
        Assert.Equal(4 * (1 - share), blend.Alkalinity, 1e-9);
    }

    [Fact]
    public void A_gap_is_named_by_the_side_that_lacks()
    {
        var reading = WaterCheck.Read(WaterAnalysis.Of(Well(sodium: 4)));
        var finding = Assert.Single(reading.Findings, f => f.Rule.StartsWith("water-gap", StringComparison.Ordinal));
        Assert.StartsWith("The analysis has more cations", finding.Told().What, StringComparison.Ordinal);
    }

    [Fact]
    public void Units_of_a_report_agree()
    {
        Assert.Equal(1, ReportedValue.AlkalinityAsCarbonate(50.043).Value, 1e-4);
        Assert.Equal(1, ReportedValue.AlkalinityAsBicarbonate(61.017).Value, 1e-4);
        Assert.Equal(1, ReportedValue.MilligramsPerLitre(Constituent.Sulfur, 96.056, "SO4").Value, 1e-4);
        Assert.Equal(1.783, ReportedValue.HardnessInDegrees(10).Value, 1e-3);
        Assert.Equal(3.566, ReportedValue.AlkalinityInDegrees(10).Value, 1e-3);
        Assert.Equal(0.5, ReportedValue.Milliequivalents(Constituent.Calcium, 1).Value, 1e-12);
    }

    [Fact]
    public void Any_numbers_give_a_water_or_an_explanation() =>
        Gen.Select(Gen.Double, Gen.Double[-10, 200], Gen.Double[-1, 15], Gen.Double[-1, 20], Gen.Double[0, 50])
            .Holds(
                (odd, alkalinity, ph, conductivity, calcium) =>
                {
                    var reading = WaterCheck.Read(
                        WaterAnalysis.Of(
                            Moles(Constituent.Boron, odd),
                            Moles(Constituent.Calcium, calcium),
                            ReportedValue.Alkalinity(alkalinity),
                            ReportedValue.PH(ph),
                            ReportedValue.Conductivity(conductivity)
                        )
                    );
                    return reading.Supply is null == reading.Faults.Count > 0
                        && (
                            reading.Supply is null
                            || Composition.Constituents.All(key => reading.Supply.Composition[key] >= 0)
                        );
                },
                iter: 5000
            );
}
