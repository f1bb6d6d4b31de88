using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Correcting;

namespace Dripwright.Engine.Tests.Nutrients.Tank;

public class TankCorrectionTests
{
    private const double Capacity = 0.3;
    private static readonly StockPair s_stock = new(2.0, 0.01);
    private static readonly MakeUpWater s_water = new(0.4);

    private static readonly Gen<(double Ec, double Volume, double Want, double? Full)> s_case = Gen.Select(
        Gen.Double[0.1, 6],
        Gen.Double[0.02, Capacity],
        Gen.Double[0.6, 4],
        Gen.OneOf(Gen.Const((double?)null), Gen.Double[0.02, Capacity].Select(v => (double?)v)),
        (ec, volume, want, full) => (ec, volume, want, full)
    );

    [Fact]
    public void Every_plan_reaches_its_EC_within_the_tank_and_loses_no_salt() =>
        s_case.Holds(c =>
        {
            var plan = Plan(c.Ec, c.Volume, c.Want, c.Full).Value!;
            Assert.True(plan is { Drained: >= 0, Water: >= 0, StockEach: >= 0 });
            Assert.True(plan.FinalVolume < Capacity + TankCorrection.LeastWater);
            Assert.Equal(c.Volume - plan.Drained + plan.Water + (2 * plan.StockEach), plan.FinalVolume, 1e-12);
            var salt =
                ((c.Volume - plan.Drained) * c.Ec) + (plan.Water * 0.4) + (2 * plan.StockEach * s_stock.Strength);
            Assert.Equal(salt, plan.FinalVolume * plan.FinalEc, 1e-9);
            Assert.Equal(c.Want, plan.FinalEc, 0.02);
            if (c.Full is { } full && full > c.Volume)
            {
                Assert.True(plan.FinalVolume > full - TankCorrection.LeastWater);
            }
        });

    [Fact]
    public void The_steps_add_up_to_the_plan_and_end_with_a_reading() =>
        s_case.Holds(c =>
        {
            var plan = Plan(c.Ec, c.Volume, c.Want, c.Full).Value!;
            Assert.Equal(plan.Drained, Sum(plan, TankStepKind.Drain), 1e-12);
            Assert.Equal(plan.Water, Sum(plan, TankStepKind.Water), 1e-12);
            Assert.Equal(plan.StockEach, Sum(plan, TankStepKind.StockA), 1e-12);
            Assert.Equal(plan.StockEach, Sum(plan, TankStepKind.StockB), 1e-12);
            if (plan.Water + plan.StockEach > 0)
            {
                Assert.Equal(plan.FinalEc, plan.Steps[^1].ExpectedEc!.Value, 1e-9);
            }
        });

    [Fact]
    public void Doing_the_first_steps_and_reckoning_again_asks_for_the_rest() =>
        Gen.Select(Gen.Double[0.5, 1.5], Gen.Double[0.3, 1])
            .Holds(
                (ec, more) =>
                {
                    var plan = Plan(ec, 0.2, ec + more, null).Value!;
                    // Two thirds first, a reading, then the rest.
                    var done = plan.StockEach * 2 / 3;
                    var volume = 0.2 + (2 * done);
                    var reads = Blend.Mixed(0.2, ec, 2 * done, s_stock.Strength);
                    var rest = Plan(reads, volume, ec + more, null).Value!;
                    Assert.Equal(plan.StockEach - done, rest.StockEach, 1e-12);
                }
            );

    [Fact]
    public void Twice_the_tank_takes_twice_the_amounts() =>
        s_case.Holds(c =>
        {
            var one = Plan(c.Ec, c.Volume, c.Want, c.Full).Value!;
            var two = TankCorrection
                .Plan(
                    new TankReading(c.Ec, 6, 2 * c.Volume),
                    new TankTarget(c.Want, Volume: 2 * c.Full),
                    s_stock,
                    s_water,
                    2 * Capacity
                )
                .Value!;
            Assert.Equal(2 * one.Water, two.Water, 1e-12);
            Assert.Equal(2 * one.StockEach, two.StockEach, 1e-12);
            Assert.Equal(2 * one.Drained, two.Drained, 1e-12);
        });

    [Fact]
    public void Adding_and_then_diluting_comes_back() =>
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[0.5, 2], Gen.Double[2.1, 4])
            .Holds(
                (volume, low, high) =>
                {
                    var stock = Blend.ToAdd(volume, low, 100, high);
                    var water = Blend.ToAdd(volume + stock, high, 0.4, low);
                    var back = Blend.Mixed(volume + stock, high, water, 0.4);
                    Assert.Equal(low, back, 1e-9);
                    Assert.Equal((volume * low) + (stock * 100) + (water * 0.4), (volume + stock + water) * back, 1e-9);
                }
            );

    [Fact]
    public void A_full_strong_tank_is_drained_first_and_no_more_than_needed()
    {
        var plan = Plan(3.0, Capacity, 2.2, null).Value!;
        Assert.Equal(TankStepKind.Drain, plan.Steps[0].Kind);
        Assert.Equal(TankStepKind.Water, plan.Steps[1].Kind);
        Assert.Equal(0.0923, plan.Drained, 0.0001);
        Assert.Equal(Capacity, plan.FinalVolume, 1e-12);
    }

    [Fact]
    public void A_target_below_the_water_is_refused_and_the_blend_named()
    {
        var plan = TankCorrection.Plan(
            new TankReading(2, 6, 0.2),
            new TankTarget(0.8),
            s_stock,
            new MakeUpWater(1.0),
            Capacity
        );
        Assert.False(plan.Found);
        Assert.Contains("less than 80 %", plan.Refusals[0].Remedy.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Filling_up_a_weak_tank_with_a_stronger_water_is_refused()
    {
        var plan = TankCorrection.Plan(
            new TankReading(0.4, 6, 0.1),
            new TankTarget(0.5, Volume: 0.2),
            s_stock,
            new MakeUpWater(0.6),
            Capacity
        );
        Assert.False(plan.Found);
        Assert.Contains("above its target of 0.50", plan.Refusals[0].What.Told(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1850, 6, 0.2, 20, "µS/cm or ppm")]
    [InlineData(-1, 6, 0.2, 20, "again")]
    [InlineData(double.NaN, 6, 0.2, 20, "again")]
    [InlineData(2, 0.7, 0.2, 20, "buffers")]
    [InlineData(2, 6, 0, 20, "Mix it new")]
    [InlineData(2, 6, -0.1, 20, "level")]
    [InlineData(2, 6, 0.5, 20, "level")]
    [InlineData(2, 6, 0.2, 68, "°F")]
    public void Impossible_readings_are_explained(double ec, double ph, double volume, double celsius, string hint)
    {
        var plan = TankCorrection.Plan(
            new TankReading(ec, ph, volume, celsius),
            new TankTarget(2),
            s_stock,
            s_water,
            Capacity
        );
        Assert.False(plan.Found);
        Assert.Contains(hint, plan.Refusals[0].Remedy.Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tank_at_its_target_is_left_alone()
    {
        var plan = Plan(2.0, 0.2, 2.01, null).Value!;
        Assert.Empty(plan.Steps);
        Assert.Contains(plan.Notes, note => note.Told() == "The EC is right.");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-17)]
    [InlineData(4e-6)]
    public void What_nobody_can_measure_out_is_no_step(double below)
    {
        // Full to a hair, EC right or a hair under: neither a trace of water nor of stock is told.
        var plan = Plan(2.0, 0.2 - below, 2.01, 0.2).Value!;
        Assert.Empty(plan.Steps);
        Assert.Equal(0, plan.Water + plan.StockEach + plan.Drained);
    }

    [Fact]
    public void Salts_that_the_scale_cannot_weigh_are_no_step()
    {
        var recipe = Engine.Nutrients.Recipe.RecipePlanner.Plan(
            new Engine.Nutrients.Recipe.RecipeJob
            {
                Water = Engine.Chemistry.Waters.WaterSupply.Pure,
                Target = Engine.Catalogue.Targets.TargetCatalogue.Default["tomato-closed"],
                Salts =
                [
                    .. Engine
                        .Catalogue.Salts.SaltCatalogue.Default.Of("potassium-nitrate", "calcium-nitrate-15.5")
                        .Select(salt => new Engine.Nutrients.Recipe.SaltAtHand(salt)),
                ],
                Scale = new Engine.Nutrients.Recipe.WeighingScale(1),
            }
        );
        var plan = TankCorrection
            .Plan(new TankReading(1.5, 6, 0.1), new TankTarget(1.6), new SaltDose(recipe, 2), s_water, Capacity)
            .Value!;
        Assert.Empty(plan.Steps);
        Assert.Equal(0, plan.SaltsFor);
        Assert.Contains(plan.Notes, note => note.Key == "tank.note.too-little");
    }

    [Fact]
    public void Acid_comes_last_in_two_parts_with_its_cautions_and_leads_to_the_pH()
    {
        var tank = Composition.Of(
            (Constituent.NitrateNitrogen, 11),
            (Constituent.Phosphorus, 1),
            (Constituent.Potassium, 6),
            (Constituent.Calcium, 3.5),
            (Constituent.Magnesium, 1),
            (Constituent.Sulfur, 1),
            (Constituent.InorganicCarbon, 1.2)
        );
        var acid = new PhBottle("nitric acid 38 %", Composition.Of((Constituent.NitrateNitrogen, 7435)));
        var plan = TankCorrection
            .Plan(
                new TankReading(1.6, 7.0, 0.2, 22),
                new TankTarget(1.6, 5.8),
                s_stock,
                s_water,
                Capacity,
                new PhMeans(tank, [acid], SolutionConditions.Closed)
            )
            .Value!;
        TankStep[] doses = [.. plan.Steps.Where(s => s.Kind == TankStepKind.PH)];
        Assert.Equal(2, doses.Length);
        Assert.Equal(plan.PH!.BottleVolume, doses.Sum(d => d.Volume), 1e-12);
        Assert.Equal(5.8, plan.PH.After.PH, 1e-6);
        Assert.Equal(7.0, plan.PH.Before.PH, 1e-6);
        Assert.Contains(plan.Cautions, c => c.Told().Contains("never water into the acid", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_an_analysis_a_bucket_test_stands_in_for_the_acid() =>
        Assert.Contains(
            Plan(1.6, 0.2, 2, null).Value!.Notes,
            n => n.Told().Contains("bucket", StringComparison.Ordinal)
        );

    [Fact]
    public void A_stock_by_its_contents_counts_for_what_its_dose_reads()
    {
        var a = Composition.Of((Constituent.Calcium, 400), (Constituent.NitrateNitrogen, 800));
        var b = Composition.Of((Constituent.Potassium, 600), (Constituent.NitrateNitrogen, 600));
        var pair = StockPair.Of(a, b, 0.01);
        var reads = Conductivity.Of((a + b) * 0.01, 5.8, SolutionConditions.Closed).DecisiemensPerMetre;
        Assert.Equal(reads, pair.Strength * 0.02, 1e-9);
    }

    private static double Sum(TankPlan plan, TankStepKind kind) =>
        plan.Steps.Where(s => s.Kind == kind).Sum(s => s.Volume);

    private static Answer<TankPlan> Plan(double ec, double volume, double want, double? full) =>
        TankCorrection.Plan(
            new TankReading(ec, 6, volume),
            new TankTarget(want, Volume: full),
            s_stock,
            s_water,
            Capacity
        );
}
