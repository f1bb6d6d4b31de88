using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Nutrients.Tank;

/// <summary>A rig's own tank: mixed directly, or out of cans that may hold acid.</summary>
public sealed class RigTankTests
{
    private const string Tank = """ "crop": "tomato", "pureShare": "100 %" """;
    private const string Cans = """ "crop": "tomato", "pureShare": "100 %", "mixing": "cans" """;
    private static readonly string s_acidCans =
        $$""" "crop": "tomato", "acid": "nitric-acid-60", "mixing": "cans", {{NutrientPlanTests.Hard}} """;

    private static Plan Of(string nutrients, string units = "metric")
    {
        var reading = RigReader.Read(
            $$"""{ "units": "{{units}}", "rows": [ { "pots": 10, "planting": [ { "crop": "tomato" } ] } ], "nutrients": { {{nutrients}} } }""",
            "test.rig.json",
            PartsCatalogue.Default
        );
        Assert.Empty(reading.Faults);
        return Plans.Of(reading.Rig!);
    }

    private static TankReading Reads(Plan plan, double ec, double ph, double share) =>
        new(ec, ph, share * plan.Nutrients!.Volume);

    [Fact]
    public void A_tank_mixed_directly_gets_the_recipe_s_salts_in_their_proportions()
    {
        var plan = Of(Tank);
        var steps = NutrientTank.Correct(plan, Reads(plan, 1.4, 5.8, 1)).Value!;
        Assert.Equal(0, steps.StockEach);
        Assert.Contains(steps.Cautions, caution => caution.Told().Contains("nitrates away", StringComparison.Ordinal));
        Assert.DoesNotContain(steps.Steps, s => s.Kind is TankStepKind.StockA or TankStepKind.StockB);
        double Weighed(string name) => steps.Steps.SelectMany(s => s.Weigh).Where(s => s.Name == name).Sum(s => s.Mass);
        // Of molybdenum a third of the amount is too little for the scale.
        var lines = plan.Nutrients!.Recipe.Lines.Where(line => line.Concentration * steps.SaltsFor > 1e-3).ToList();
        Assert.Equal(5, lines.Count);
        foreach (var line in lines)
        {
            Assert.Equal(line.Concentration * steps.SaltsFor, Weighed(line.Salt.Name), 1e-9);
        }
    }

    [Theory]
    [InlineData(Tank, 1.4, 1.0)]
    [InlineData(Tank, 1.0, 0.5)]
    [InlineData(Cans, 1.4, 1.0)]
    [InlineData(Cans, 1.0, 0.5)]
    public void The_ions_of_the_mended_tank_read_the_strength_wanted(string nutrients, double ec, double share)
    {
        var plan = Of(nutrients);
        var steps = NutrientTank.Correct(plan, Reads(plan, ec, 5.8, share)).Value!;
        Assert.Equal(1.9, NutrientPlanner.EcOf(steps.Mixed!, 5.8).DecisiemensPerMetre, 0.03);
    }

    [Fact]
    public void Acid_in_the_cans_goes_no_further_than_the_fresh_water_it_is_for()
    {
        var plan = Of(s_acidCans);
        var feed = plan.Nutrients!;
        var steps = NutrientTank.Correct(plan, Reads(plan, 1.4, 6.0, 0.8)).Value!;
        // Stock for the fresh water alone: its dose in what is filled up, and not for the tank that is there.
        var filled = steps.Water + (2 * steps.StockEach);
        Assert.Equal(0.2 * feed.Volume, filled, 1e-6);
        Assert.Equal(feed.Stock!.DosePerLitre * filled, steps.StockEach, 1e-9);
        Assert.True(steps.SaltsFor > 0);
        Assert.DoesNotContain(
            steps.Steps.SelectMany(s => s.Weigh),
            s =>
                s.Name.Contains("acid", StringComparison.OrdinalIgnoreCase)
                && !s.Name.StartsWith("Boric", StringComparison.Ordinal)
        );
        Assert.True(steps.MixedPH > 5.3);
        Assert.Contains("acid", steps.Notes[0].Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void Stock_with_acid_for_a_full_tank_is_not_poured_at_all()
    {
        var plan = Of(s_acidCans);
        var steps = NutrientTank.Correct(plan, Reads(plan, 1.4, 6.0, 1)).Value!;
        Assert.Equal(0, steps.StockEach);
        Assert.True(steps.SaltsFor > 0);
    }

    [Fact]
    public void An_almost_empty_tank_gets_stock_with_its_acid_as_a_fresh_one_does()
    {
        var plan = Of(s_acidCans);
        var steps = NutrientTank.Correct(plan, Reads(plan, 1.9, 5.8, 0.05)).Value!;
        Assert.True(steps.StockEach > 0);
        Assert.Equal(5.8, steps.MixedPH!.Value, 0.3);
    }

    [Fact]
    public void The_steps_of_one_correction_are_told_in_either_system_of_units()
    {
        var plan = Of(Tank);
        var step = NutrientTank
            .Correct(plan, Reads(plan, 1.9, 5.8, 0.5))
            .Value!.Steps.First(s => s.Kind == TankStepKind.Water)
            .Text;
        Assert.Contains(" gal ", step.Told(), StringComparison.Ordinal);
        Assert.Contains(" L ", step.Told(UnitSystem.Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Measured_sodium_says_how_much_to_drain_and_the_tank_then_keeps_the_limit()
    {
        var plan = Of(Tank);
        var limit = plan.Nutrients!.SodiumLimit.Classic;
        var reading = Reads(plan, 1.9, 5.8, 1);
        var one = Assert.Single(NutrientRenewal.Of(plan, reading, new TankPast(Sodium: 2 * limit)));
        Assert.Equal(Constituent.Sodium, one.Because);
        var fresh = plan.Nutrients!.Recipe.Composition[Constituent.Sodium];
        Assert.Equal(limit, ((1 - one.Share) * 2 * limit) + (one.Share * fresh), 1e-9);
        Assert.Equal(one.Share * reading.Volume, one.Volume, 1e-12);
        Assert.Equal(0, NutrientRenewal.Of(plan, reading, new TankPast(Sodium: 0.5 * limit))[0].Share);
    }

    [Fact]
    public void A_fresh_tank_needs_nothing_drained_and_an_old_one_is_told_which_element_asks()
    {
        var plan = Of(Tank);
        var reading = Reads(plan, 1.9, 5.8, 1);
        Assert.All(NutrientRenewal.Of(plan, reading, new TankPast(0)), r => Assert.Equal(0, r.Share, 1e-6));
        var old = NutrientRenewal.Of(plan, reading, new TankPast(60));
        Assert.Contains(old, r => r is { Share: > 0, Because: not null and not Constituent.Sodium });
        Assert.Equal(0, Assert.Single(NutrientRenewal.Of(plan, reading, new TankPast())).Share);
    }

    [Theory]
    [InlineData(Tank)]
    [InlineData(Cans)]
    public void The_top_up_of_two_readings_holds_the_tank(string nutrients)
    {
        var plan = Of(nutrients);
        var full = plan.Nutrients!.Volume;
        var first = new TankReading(1.9, 5.8, full);
        var second = new TankReading(2.1, 5.8, 0.7 * full);
        var advice = NutrientUptake.Between(plan, first, second, new PouredBetween(), 3).Value!;
        // By hand: 1.9 times all less 2.1 times what is left, over the water that went.
        Assert.Equal((1.9 - (2.1 * 0.7)) / 0.3, advice.Taken.DecisiemensPerMetre, 1e-9);
        Assert.Equal(0.1 * full, advice.PerDay!.Value, 1e-9);
        Assert.Equal(0.3 * full, advice.Volume, 1e-9);
        Assert.Equal(nutrients == Tank, advice.Salts.Count > 0);
        Assert.Equal(nutrients == Cans, advice.StockEach > 0);
        // What was taken, the nearest of the usual top-ups, what to give, and the mark; for salts bottles and a caution too.
        Assert.InRange(advice.Lines.Count, 4, nutrients == Cans ? 4 : 7);
    }

    [Fact]
    public void Readings_that_do_not_fit_together_are_explained()
    {
        var plan = Of(Tank);
        var full = plan.Nutrients!.Volume;
        string Why(
            double firstEc,
            double firstShare,
            double secondEc,
            double secondShare,
            PouredBetween poured,
            double? days = null
        ) =>
            NutrientUptake
                .Between(
                    plan,
                    new TankReading(firstEc, 5.8, firstShare * full),
                    new TankReading(secondEc, 5.8, secondShare * full),
                    poured,
                    days
                )
                .Refusals[0]
                .What.Told();
        Assert.Contains(
            "more in the tank than before",
            Why(1.9, 0.8, 1.9, 0.9, new PouredBetween()),
            StringComparison.Ordinal
        );
        Assert.Contains("salt", Why(1.5, 0.9, 2.8, 0.8, new PouredBetween()), StringComparison.Ordinal);
        Assert.Contains("no plant", Why(2.5, 0.9, 1.5, 0.88, new PouredBetween()), StringComparison.Ordinal);
        Assert.Contains(
            "no stock tanks",
            Why(1.9, 1, 1.9, 0.8, new PouredBetween(StockEach: 1e-3)),
            StringComparison.Ordinal
        );
        Assert.Contains("time", Why(1.9, 1, 1.9, 0.8, new PouredBetween(), 0), StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_is_asked_wrongly_is_told_at_once_with_its_field()
    {
        var reader = new FieldReader();
        reader.Reading("1100 ppm", "600", "NaN", "20 furlongs", "");
        reader.Past("-3", "120");
        Assert.Equal(["meterScale", "ph", "volume", "sodium", "days"], reader.Faults.Select(f => f.Field));
        var good = new FieldReader();
        var read = good.Reading("1100 ppm", "500", "6.4", "20 gal", "68 F");
        Assert.Empty(good.Faults);
        Assert.Equal(2.2, read.DecisiemensPerMetre, 1e-9);
        Assert.Equal(20, read.Celsius, 1e-9);
        Assert.Equal(0.0757, read.Volume, 1e-4);
    }

    [Fact]
    public void Amounts_below_nothing_are_told_with_their_field()
    {
        var reader = new FieldReader();
        reader.Poured("-20 L", "-1 gal", "-5 mL");
        reader.Past(null, "-5 mg/L");
        Assert.Equal(["water", "solution", "stock", "sodium"], reader.Faults.Select(f => f.Field));
        Assert.All(reader.Faults, f => Assert.EndsWith("not below 0", f.Expected.Told(), StringComparison.Ordinal));
        Assert.Equal("\"-20 L\"", reader.Faults[0].Found.Told());
    }
}
