using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Planning;

/// <summary>What is assumed of emitters, pump and strainer is shown, and can be set.</summary>
public sealed class SeasonedRigTests
{
    [Fact]
    public void With_more_emitters_clogged_a_weak_pot_is_more_likely()
    {
        double Weak(string clogged) =>
            Plans
                .From($$"""{ "rows": [ { "pots": 6 } ], "feed": { "clogged": "{{clogged}}" } }""", 2000)
                .Feed.Scatter!.ChanceOfWeakPot;
        Assert.True(Weak("0 %") < Weak("5 %"));
        Assert.True(Weak("5 %") < Weak("30 %"));
    }

    [Fact]
    public void A_pot_with_fewer_emitters_on_purpose_is_no_weak_pot()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 6, "planting": [ { "pots": "1-5" }, { "pots": "6", "emitters": 1 } ] } ],
              "feed": { "clogged": "0 %" } }
            """,
            1000
        );
        Assert.True(plan.Feed.Scatter!.ChanceOfBeingWeak[5] < 0.05);
        Assert.Null(plan.Said("weak-pot-likely"));
    }

    [Fact]
    public void A_worn_pump_and_a_dirty_strainer_never_give_a_pot_more()
    {
        var feed = Plans.From("""{ "pump": { "shutOffHead": "5 ft", "openFlow": "250 gph" } }""").Feed;
        Assert.Equal([WearKind.Pump, WearKind.Strainer], feed.Worn.Select(w => w.Kind));
        foreach (var worn in feed.Worn)
        {
            Assert.Equal(feed.Pots.Count, worn.Pots.Count);
            Assert.All(feed.Pots.Zip(worn.Pots), p => Assert.True(p.Second < p.First.Flow));
        }
    }

    [Fact]
    public void A_leaflet_that_ends_above_no_lift_gives_the_same_as_the_whole_curve_within_its_points()
    {
        const string Points =
            """{ "flow": "0 gph", "head": "8 ft" }, { "flow": "100 gph", "head": "7.4 ft" }, { "flow": "200 gph", "head": "6 ft" }""";
        var leaflet = Plans.From(
            $$"""{ "pump": { "curve": [ {{Points}}, { "flow": "300 gph", "head": "4 ft" } ] } }"""
        );
        var whole = Plans.From(
            $$"""{ "pump": { "curve": [ {{Points}}, { "flow": "300 gph", "head": "4 ft" }, { "flow": "430 gph" } ] } }"""
        );
        Assert.True(leaflet.Feed.Solved);
        Assert.Equal(whole.Feed.TotalFlow, leaflet.Feed.TotalFlow, whole.Feed.TotalFlow * 1e-3);
    }
}
