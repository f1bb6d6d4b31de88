using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tests.Nutrients.Loop;

public class LoopForecastTests
{
    private static readonly Composition s_recipe = Composition.Of(
        (Constituent.NitrateNitrogen, 10.75),
        (Constituent.AmmoniumNitrogen, 1),
        (Constituent.Phosphorus, 1.25),
        (Constituent.Potassium, 6.5),
        (Constituent.Calcium, 2.75),
        (Constituent.Magnesium, 1),
        (Constituent.Sulfur, 1.5)
    );

    private static readonly Composition s_water = Composition.Of(
        (Constituent.Sodium, 1.5),
        (Constituent.Chloride, 1.5)
    );

    private static LoopForecast Forecast(Composition uptake, Composition water) =>
        new(
            new LoopSystem(0.2, 0.1, 0.08),
            new LoopState(water + s_recipe, water + s_recipe),
            water,
            [new LoopUptake(56, 0.03, uptake, Composition.Nothing)]
        )
        {
            Limits = new Dictionary<Constituent, double> { [Constituent.Sodium] = 8 },
            Cost = new RecipeCost(1.5, 2),
        };

    [Fact]
    public void Full_strength_that_is_what_plants_take_changes_nothing()
    {
        var outcome = Forecast(s_recipe, Composition.Nothing).Run(new TopUpStrategy(Phrase.Plain("full"), s_recipe, 1));
        Assert.Equal(56, outcome.Evenings.Count);
        Assert.Equal(
            outcome.Evenings[0].ReservoirEc.DecisiemensPerMetre,
            outcome.Evenings[^1].ReservoirEc.DecisiemensPerMetre,
            1e-6
        );
        Assert.Empty(outcome.Wanting);
        Assert.Empty(outcome.PastLimit);
        Assert.Equal(56 * 0.03 * 1.5, outcome.FertiliserKilograms, 1e-9);
        Assert.Equal(2 * outcome.FertiliserKilograms, (double)outcome.Cost, 1e-9);
    }

    [Fact]
    public void Water_only_weakens_full_strength_strengthens_and_held_EC_holds()
    {
        var forecast = Forecast(s_recipe * 0.7, s_water);
        var start = Conductivity.Of(s_water + s_recipe, 5.8, SolutionConditions.Closed);
        var outcomes = forecast.Compare(TopUpStrategy.Usual(s_recipe, start));
        double[] ends = [.. outcomes.Select(o => o.Evenings[^1].ReservoirEc.DecisiemensPerMetre)];
        Assert.True(ends[0] < ends[1] && ends[1] < ends[2]);
        Assert.True(ends[2] > start.DecisiemensPerMetre);
        Assert.All(
            outcomes[3].Evenings.Where(e => e.Factor > 0),
            e => Assert.Equal(start.DecisiemensPerMetre, e.ReservoirEc.DecisiemensPerMetre, 1e-6)
        );
    }

    [Fact]
    public void Held_EC_hides_sodium_that_crowds_out_feed()
    {
        var forecast = Forecast(s_recipe * 0.9, s_water);
        var start = Conductivity.Of(s_water + s_recipe, 5.8, SolutionConditions.Closed);
        var held = forecast.Run(new TopUpStrategy(Phrase.Plain("held"), s_recipe, 0, start));
        Assert.True(held.PastLimit.TryGetValue(Constituent.Sodium, out var day));
        // As one pool, 300 L with 30 L a day of 1.5 mmol/L from 1.5 to 8 takes 43 days; the pots are ahead of the mean.
        Assert.InRange(day, 25, 42);
        var then = held.Evenings[day - 1];
        var mean =
            ((0.2 * then.State.Reservoir[Constituent.Sodium]) + (0.1 * then.State.Pots[Constituent.Sodium])) / 0.3;
        Assert.Equal(1.5 + (0.15 * day), mean, 1e-9);
        var hidden = HiddenIons.Of(held.Evenings[^1].State.Reservoir, s_water, s_recipe).Value!;
        Assert.Contains(hidden.Take(2), h => h.Constituent == Constituent.Sodium && h.Off > 0);
        Assert.Contains(hidden, h => h.Constituent == Constituent.NitrateNitrogen && h.Off < 0);
    }

    [Fact]
    public void Dumping_keeps_sodium_down_and_costs_fertiliser()
    {
        var plain = Forecast(s_recipe * 0.9, s_water * 2);
        var strategy = new TopUpStrategy(Phrase.Plain("full"), s_recipe, 0.9);
        var kept = plain.Run(strategy);
        var dumped = (
            plain with
            {
                Bleed = new BleedRule(0, new Dictionary<Constituent, double> { [Constituent.Sodium] = 8 }),
            }
        ).Run(strategy);
        Assert.True(dumped.Dumps > 0);
        Assert.True(
            dumped.Evenings[^1].State.Pots[Constituent.Sodium] < kept.Evenings[^1].State.Pots[Constituent.Sodium]
        );
        Assert.True(dumped.LetOutKilograms > 0 && dumped.LetOutCost > 0);
        Assert.Equal(dumped.Dumps * 0.2, dumped.LetOut, 1e-9);
        Assert.Equal(0, kept.LetOut);
    }

    [Fact]
    public void A_forecast_loses_nothing_through_dumps_and_bleeds()
    {
        var forecast = Forecast(s_recipe * 0.9, s_water * 2) with
        {
            Bleed = new BleedRule(0.1, new Dictionary<Constituent, double> { [Constituent.Sodium] = 8 }),
        };
        var outcome = forecast.Run(new TopUpStrategy(Phrase.Plain("full"), s_recipe, 1));
        var end = outcome.Evenings[^1].State;
        foreach (var one in Composition.Constituents)
        {
            var before = (0.2 * forecast.Start.Reservoir[one]) + (0.1 * forecast.Start.Pots[one]);
            var after = (0.2 * end.Reservoir[one]) + (0.1 * end.Pots[one]);
            Assert.Equal(before + outcome.MadeUp[one] - outcome.TakenUp[one] - outcome.Lost[one], after, 1e-9);
        }
    }

    [Fact]
    public void A_loop_that_turns_to_brine_is_stopped_and_explained()
    {
        var sea = Composition.Of((Constituent.Sodium, 400), (Constituent.Chloride, 400));
        var outcome = Forecast(Composition.Nothing, sea).Run(new TopUpStrategy(Phrase.Plain("sea"), s_recipe, 0));
        Assert.NotNull(outcome.Stopped);
        Assert.True(outcome.Evenings.Count < 56);
    }

    [Fact]
    public void Plants_that_take_up_all_of_the_feed_are_no_closed_loop() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LoopDay.Run(
                new LoopSystem(0.2, 0.1, 0.03),
                new LoopState(s_recipe, s_recipe),
                new LoopUptake(1, 0.03, s_recipe, Composition.Nothing),
                s_recipe
            )
        );
}
