namespace Dripwright.Engine.Tests.Planning;

/// <summary>The siphon-breaking hole is in the network: it spouts while the pump runs.</summary>
public sealed class BreakHoleTests
{
    private const double Gravity = 9.80665;

    [Theory]
    [InlineData("pump-150gph", "60 %")]
    [InlineData("pump-400gph", "75 %")]
    [InlineData("pump-1200gph", "90 %")]
    public void The_hole_spouts_by_the_orifice_law_at_the_pressure_that_the_pump_leaves_there(string pump, string fill)
    {
        var plan = With(pump, fill, hole: true);
        var hole = plan.Layout.BreakHole!;
        var point = plan.Feed.OperatingPoint!;
        var before = plan.Feed.Runs.First(r => r.To == "break");
        var over = plan.Layout.Tank.Full + point.Head - before.HeadLoss - hole.Height;
        var area = Math.PI / 4 * hole.Diameter * hole.Diameter;
        Assert.Equal(0.6 * area * Math.Sqrt(2 * Gravity * over), plan.Feed.BreakHole!.Flow, 1e-8);
        Assert.Equal(point.Flow, plan.Feed.TotalFlow + plan.Feed.BreakHole.Flow, 1e-9);
    }

    [Theory]
    [InlineData("pump-150gph", "60 %")]
    [InlineData("pump-400gph", "75 %")]
    public void The_pots_get_less_than_without_it_and_the_plan_says_how_much_they_would_get(string pump, string fill)
    {
        var with = With(pump, fill, hole: true).Feed;
        var without = With(pump, fill, hole: false).Feed;
        Assert.Null(without.BreakHole);
        Assert.True(with.TotalFlow < without.TotalFlow);
        Assert.True(with.OperatingPoint!.Flow > without.OperatingPoint!.Flow);
        // Only the node that the hole needs lies between the two.
        Assert.Equal(without.TotalFlow, with.BreakHole!.TotalWithout, 1e-9);
    }

    [Fact]
    public void A_hole_at_a_throttle_or_bypass_is_solved_as_well()
    {
        foreach (var fill in (string[])["30 %", "60 %", "90 %"])
        {
            var plan = Plans.From(
                $$"""{ "feed": { "siphonBreak": true, "throttle": "40 %", "bypass": "30 %" }, "reservoir": { "fill": "{{fill}}" } }"""
            );
            var feed = plan.Feed;
            Assert.True(feed.Solved);
            Assert.Equal(feed.OperatingPoint!.Flow, feed.TotalFlow + feed.BypassFlow + feed.BreakHole!.Flow, 1e-9);
        }
    }

    [Fact]
    public void A_raised_reservoir_without_a_pump_has_none()
    {
        var plan = Plans.From(
            """{ "pump": { "model": "none" }, "feed": { "siphonBreak": true }, "reservoir": { "base": "6 ft" }, "drain": { "into": "catch-tank" } }"""
        );
        Assert.Null(plan.Layout.BreakHole);
        Assert.Null(plan.Feed.BreakHole);
    }

    private static Plan With(string pump, string fill, bool hole) =>
        Plans.From(
            $$"""{ "feed": { "siphonBreak": {{(hole ? "true" : "false")}} }, "pump": { "model": "{{pump}}" }, "reservoir": { "fill": "{{fill}}" } }"""
        );
}
