using CsCheck;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;

namespace Dripwright.Engine.Tests.Nutrients.Strength;

public class PhLawTests
{
    private static readonly PhBottle s_nitric = new(
        "nitric acid 38 %",
        Composition.Of((Constituent.NitrateNitrogen, 7435))
    );

    private static readonly PhBottle s_phosphoric = new(
        "phosphoric acid 59 %",
        Composition.Of((Constituent.Phosphorus, 8525))
    );

    private static readonly PhBottle s_lye = new("potassium hydroxide", Composition.Of((Constituent.Potassium, 5000)));

    [Fact]
    public void More_acid_never_raises_pH() =>
        Gen.Select(Generated.Balanced, Gen.Double[0, 3e-4], Gen.Double[1e-6, 3e-4], Gen.Bool)
            .Holds(
                (tank, dose, more, open) =>
                {
                    var around = open ? SolutionConditions.Open : SolutionConditions.Closed;
                    Assert.True(Ph(tank, s_nitric, dose + more, around) < Ph(tank, s_nitric, dose, around));
                    Assert.True(Ph(tank, s_lye, dose + more, around) > Ph(tank, s_lye, dose, around));
                },
                iter: 100
            );

    [Fact]
    public void The_dose_leads_to_the_pH_it_was_reckoned_for() =>
        Gen.Select(Generated.Balanced, Gen.Double[4.5, 7.5], Gen.Bool)
            .Holds(
                (tank, target, phosphoric) =>
                {
                    var acid = phosphoric ? s_phosphoric : s_nitric;
                    var down = SolutionPh.Of(tank, SolutionConditions.Closed).Value!.PH > target;
                    var dose = PhDosing.ToReach(tank, 0.2, target, down ? acid : s_lye, SolutionConditions.Closed);
                    Assert.True(dose.Found);
                    Assert.Equal(target, dose.Value.After.PH, 1e-6);
                    Assert.Equal(
                        target,
                        Ph(tank, dose.Value.Bottle, dose.Value.BottleVolume / 0.2, SolutionConditions.Closed),
                        1e-6
                    );
                },
                iter: 100
            );

    [Fact]
    public void Ten_times_the_tank_takes_ten_times_the_acid() =>
        Generated.Balanced.Holds(
            tank =>
            {
                var hard = tank + Composition.Of((Constituent.Potassium, 2), (Constituent.InorganicCarbon, 3));
                var small = PhDosing.ToReach(hard, 0.1, 5, s_nitric, SolutionConditions.Closed).Value!.BottleVolume;
                var large = PhDosing.ToReach(hard, 1, 5, s_nitric, SolutionConditions.Closed).Value!.BottleVolume;
                Assert.Equal(10 * small, large, 1e-9);
            },
            iter: 50
        );

    [Fact]
    public void The_gap_of_an_analysis_gives_back_the_measured_pH() =>
        Gen.Select(Generated.Balanced, Gen.Double[4, 9])
            .Holds(
                (tank, ph) =>
                {
                    var gap = SolutionPh.Gap(tank, ph, SolutionConditions.Closed);
                    Assert.Equal(ph, SolutionPh.Of(tank, SolutionConditions.Closed, gap).Value!.PH, 1e-6);
                },
                iter: 100
            );

    [Fact]
    public void Alkalinity_read_is_alkalinity_reckoned() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[7, 8.5])
            .Holds(
                (alkalinity, ph) =>
                {
                    var water = Titration.WithCarbon(Hard(alkalinity), alkalinity, ph, SolutionConditions.Closed);
                    Assert.Equal(alkalinity, Speciation.At(water, ph, SolutionConditions.Closed).Alkalinity, 1e-9);
                    // A titration to 4.5 also pays for the acidity of the end point itself.
                    // The water's own charge balances at the pH that was read, since its cations are its alkalinity.
                    Assert.Equal(ph, SolutionPh.Of(water, SolutionConditions.Closed).Value!.PH, 1e-5);
                    Assert.Equal(
                        alkalinity,
                        Titration.Alkalinity(water, SolutionConditions.Closed),
                        0.05 + (0.02 * alkalinity)
                    );
                },
                iter: 100
            );

    [Fact]
    public void Water_without_alkalinity_turns_acid_with_a_drop()
    {
        var dose = PhDosing.ToReach(Composition.Nothing, 0.2, 5, s_nitric, SolutionConditions.Closed).Value!;
        Assert.Equal(0.2 * 0.01 / 7.435, dose.BottleVolume * 1000, 1e-5);
    }

    [Fact]
    public void Water_of_ten_milliequivalents_takes_ten_when_it_is_aired()
    {
        var water = Titration.WithCarbon(Hard(10), 10, 7.8, SolutionConditions.Closed);
        var acid = Titration.AcidTo(water, 5.8, SolutionConditions.Open);
        Assert.InRange(acid, 9.9, 10);
        Assert.True(Titration.AcidTo(water, 5.8, SolutionConditions.Closed) < 0.85 * acid);
    }

    [Fact]
    public void The_wrong_bottle_is_refused_and_the_right_kind_named()
    {
        var water = Titration.WithCarbon(Hard(4), 4, 7.6, SolutionConditions.Closed);
        var up = PhDosing.ToReach(water, 0.2, 5.8, s_lye, SolutionConditions.Closed);
        Assert.False(up.Found);
        Assert.Contains("acid", up.Refusals[0].Remedy.Told(), StringComparison.Ordinal);
        var down = PhDosing.ToReach(water, 0.2, 8.5, s_nitric, SolutionConditions.Closed);
        Assert.False(down.Found);
        Assert.Contains("base", down.Refusals[0].Remedy.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_weak_bottle_is_refused()
    {
        var water = Titration.WithCarbon(Hard(10), 10, 7.6, SolutionConditions.Closed);
        var vinegarish = new PhBottle("weak acid", Composition.Of((Constituent.NitrateNitrogen, 20)));
        Assert.False(PhDosing.ToReach(water, 0.2, 5.5, vinegarish, SolutionConditions.Closed).Found);
    }

    [Fact]
    public void A_bottle_of_neutral_salt_is_no_pH_bottle() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new PhBottle(
                "saltpetre",
                Composition.Of((Constituent.Potassium, 1000), (Constituent.NitrateNitrogen, 1000))
            )
        );

    [Fact]
    public void Bottles_of_the_shelf_hold_what_their_labels_say()
    {
        var nitric = PhBottle.Of(SaltCatalogue.Default["nitric-acid-38"])!;
        Assert.Equal(7435, nitric.Equivalents, 0.005 * 7435);
        Assert.True(nitric.IsAcid);
        var bicarbonate = PhBottle.Dissolved(SaltCatalogue.Default["potassium-bicarbonate"], 100.1);
        Assert.Equal(-1000, bicarbonate.Equivalents, 1.0);
        Assert.Equal(1000, bicarbonate.Contents[Constituent.InorganicCarbon], 1.0);
        Assert.Null(PhBottle.Of(SaltCatalogue.Default["potassium-bicarbonate"]));
    }

    private static Composition Hard(double alkalinity) => Composition.Of((Constituent.Calcium, alkalinity / 2));

    private static double Ph(Composition tank, PhBottle bottle, double share, SolutionConditions around) =>
        PhDosing.After(tank, 1, bottle, share, around).Value!.After.PH;
}
