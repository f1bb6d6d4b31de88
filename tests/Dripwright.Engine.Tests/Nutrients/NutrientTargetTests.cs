using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Tests.Nutrients;

public sealed class NutrientTargetTests
{
    [Fact]
    public void Every_crop_has_every_stage_at_its_strength()
    {
        foreach (var crop in (string[])["tomato", "cucumber", "sweet-pepper"])
        {
            foreach (var stage in Enum.GetValues<GrowthStage>())
            {
                var row = TargetCatalogue.Default.StageOf(crop, stage);
                var target = TargetCatalogue.Default.For(crop, stage);
                Assert.NotNull(row);
                Assert.Equal(row.Conductivity, NutrientTarget.CationRule(target!.Complete), 1e-9);
            }
        }
    }

    [Fact]
    public void Young_tomatoes_are_fed_at_around_1_9() =>
        Assert.Equal(0.19, TargetCatalogue.Default.StageOf("tomato", GrowthStage.Young)!.Conductivity, 1e-12);

    [Fact]
    public void Scaling_keeps_proportions_and_traces()
    {
        var target = TargetCatalogue.Default["tomato-closed"];
        var strong = target.TryScaledTo(0.2)!;
        Assert.Equal(2.0 / 1.5 * 6.5, strong.Wanted[Constituent.Potassium], 1e-6);
        Assert.Equal(target.Wanted[Constituent.Iron], strong.Wanted[Constituent.Iron]);
    }

    [Fact]
    public void Any_growing_model_can_be_plugged_in()
    {
        double Model(Composition feed) => Math.Sqrt(Charges.Cations(feed)) / 20;
        var target = TargetCatalogue.Default["steiner"].TryScaledTo(0.2, Model)!;
        Assert.Equal(0.2, Model(target.Complete), 1e-9);
    }

    [Fact]
    public void A_strength_out_of_reach_is_no_target() =>
        Assert.Null(TargetCatalogue.Default["steiner"].TryScaledTo(3));

    [Fact]
    public void The_growers_own_targets_and_stages_lie_over_ours()
    {
        var reading = CatalogueReader.Read(
            """
            {"targets":[{"key":"mine","name":"Mine","source":"my own","milligramsPerLitre":{"n":150,"k":200,"ca":140}}],
             "stages":[{"crop":"tomato","stage":"young","target":"mine","conductivity":"1.5 dS/m","source":"my own"}]}
            """u8,
            "mine.json",
            PartsCatalogue.Default
        );
        Assert.Empty(reading.Faults);
        Assert.Equal("mine", reading.Catalogue!.Targets.StageOf("tomato", GrowthStage.Young)!.Target);
        Assert.True(reading.Catalogue.Targets["mine"].NitrogenIsSum);
    }

    [Fact]
    public void A_target_that_starts_from_another_has_its_own_amounts_or_all_of_the_others()
    {
        var reading = CatalogueReader.Read(
            """
            {"targets":[{"key":"named","basedOn":"steiner","name":"As my aunt calls it"},
                        {"key":"own","basedOn":"steiner","milligramsPerLitre":{"k":300}}]}
            """u8,
            "mine.json",
            PartsCatalogue.Default
        );
        Assert.Empty(reading.Faults);
        var targets = reading.Catalogue!.Targets;
        Assert.Equal(targets["steiner"].Wanted, targets["named"].Wanted);
        Assert.Equal("As my aunt calls it", targets["named"].Name);
        Assert.Equal([Constituent.Potassium], targets["own"].Wanted.Keys);
    }

    [Fact]
    public void A_stage_of_an_unknown_target_is_a_fault()
    {
        var reading = CatalogueReader.Read(
            """{"stages":[{"crop":"tomato","stage":"young","target":"stiener","conductivity":"1.5 dS/m","source":"s"}]}"""u8,
            "mine.json",
            PartsCatalogue.Default
        );
        Assert.Equal("steiner", Assert.Single(reading.Faults).Nearest);
    }
}
