using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>Warm water is thinner: long narrow paths give more of it, short wide ones hardly.</summary>
public sealed class LaminarEmitterTests
{
    [Fact]
    public void An_open_microtube_gives_more_in_warm_water_and_less_in_cold()
    {
        double At(string temperature) =>
            Plans
                .From(
                    $$"""{ "feed": { "emitter": "{{Laminar.Key}}", "microtubeLength": "0 in" }, "reservoir": { "waterTemperature": "{{temperature}}" } }"""
                )
                .Feed.TotalFlow;
        var (cold, usual, warm) = (At("10 C"), At("20 C"), At("30 C"));
        Assert.InRange(cold / usual, 0.75, 0.9);
        Assert.InRange(warm / usual, 1.1, 1.27);
    }

    [Fact]
    public void Turbulent_and_compensating_emitters_do_not_feel_it()
    {
        foreach (var emitter in PartsCatalogue.Default.Emitters.Values)
        {
            if (emitter.Exponent <= 0.5)
            {
                Assert.Equal(1, FeedModel.Thinness(emitter, 10), 12);
                Assert.Equal(1, FeedModel.Thinness(emitter, 35), 12);
            }
        }
    }

    [Fact]
    public void At_the_temperature_of_its_rating_an_emitter_gives_what_is_rated()
    {
        foreach (var emitter in PartsCatalogue.Default.Emitters.Values)
        {
            Assert.Equal(1, FeedModel.Thinness(emitter, 20), 12);
        }
    }

    [Fact]
    public void A_longer_open_tube_gives_less_and_each_pot_may_have_its_own()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 4, "planting": [ { "pots": "1-2" }, { "pots": "3-4", "microtubeLength": "6 ft" } ] } ],
              "feed": { "emitter": "tube-open-1/4", "emittersPerPot": 1, "microtubeLength": "1 ft" } }
            """
        );
        var pots = plan.Feed.Pots;
        Assert.True(pots[0].Flow > 1.2 * pots[3].Flow);
        // Two tubes of a foot and two of six, bought by the coil.
        Assert.Contains(plan.Parts.Lines, l => l.Part.StartsWith("microtube-", StringComparison.Ordinal));
    }

    private static EmitterType Laminar => PartsCatalogue.Default.Emitters.Values.First(e => e.Exponent > 0.9);
}
