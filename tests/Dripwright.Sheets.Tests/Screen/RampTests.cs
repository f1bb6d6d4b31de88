using System.Globalization;
using CsCheck;
using Dripwright.Engine;
using Dripwright.Sheets.Screen;
using Dripwright.Sheets.Tests.Bench;

namespace Dripwright.Sheets.Tests.Screen;

public sealed class RampTests
{
    [Fact]
    public void In_grey_each_step_is_plainly_lighter_than_the_one_before()
    {
        // Lightness L* of CIE 1976 from 0 to 100; a difference of 2.3 is just seen.
        var grey = Ramp.Colours.Select(c => (116 * Math.Cbrt(Ramp.Luminance(c))) - 16).ToList();
        Assert.All(grey.Zip(grey.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 12, 18));
    }

    [Fact]
    public void Letters_on_every_step_can_be_read() =>
        Assert.All(Ramp.Colours.Zip(Ramp.Letters), pair => Assert.True(Ramp.Contrast(pair.First, pair.Second) >= 4.5));

    [Fact]
    public void Contrast_is_that_of_the_web_guidelines()
    {
        Assert.Equal(21, Ramp.Contrast("#ffffff", "#000000"), 9);
        Assert.Equal(1, Ramp.Contrast("#35456c", "#35456c"), 9);
    }

    [Fact]
    public void Six_round_steps_cover_the_values_and_are_never_finer_than_a_tenth_of_them() =>
        Gen.Select(Gen.Double[0, 1e-5], Gen.Double[1e-8, 1e-5])
            .Holds(
                (low, width) =>
                {
                    var plan = WithFlows(low, low + width);
                    var scale = StepScale.Of(plan, ScreenColour.Flow)!;
                    var values = plan.Feed.Pots.Select(p => scale.Value(p.Flow, p.Pressure)).OfType<double>().ToList();
                    Assert.Equal(7, scale.Edges.Count);
                    var step = scale.Edges[1] - scale.Edges[0];
                    Assert.All(
                        scale.Edges.Zip(scale.Edges.Skip(1)),
                        e => Assert.Equal(step, e.Second - e.First, step * 1e-6)
                    );
                    Assert.All(
                        values,
                        v =>
                        {
                            var at = scale.StepOf(v);
                            Assert.InRange(at, 1, 6);
                            Assert.InRange(v, scale.Edges[at - 1] - (step * 1e-6), scale.Edges[at] + (step * 1e-6));
                        }
                    );
                    Assert.True(step * 6 >= values.Max() * 0.0999);
                    Assert.True(scale.Edges[0] >= 0);
                    // Edges are written exactly.
                    Assert.All(
                        scale.Edges,
                        e =>
                            Assert.Equal(
                                e,
                                double.Parse(scale.Text(e), CultureInfo.InvariantCulture),
                                Math.Max(step * 1e-3, 1e-12)
                            )
                    );
                }
            );

    [Fact]
    public void Without_water_there_is_a_scale_without_edges_and_every_pot_is_at_step_0()
    {
        var plan = BenchPlans.Of(BenchPlans.AllShut);
        Assert.Empty(StepScale.Of(plan, ScreenColour.Flow)!.Edges);
        Assert.Null(StepScale.Of(plan, ScreenColour.None));
        var pots = ScreenViewTests.Parts(
            ScreenViewTests.Read(plan, ScreenKind.Plan, new() { Colour = ScreenColour.Flow })
        );
        Assert.All(
            pots.Where(p => p.Attribute("data-pot") is not null),
            p => Assert.EndsWith("step-0", (string)p.Attribute("class")!, StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(ScreenColour.Flow)]
    [InlineData(ScreenColour.Pressure)]
    public void A_pots_colour_is_the_step_of_its_value(ScreenColour colour)
    {
        var plan = BenchPlans.Demo(BenchPlans.Large);
        var scale = StepScale.Of(plan, colour)!;
        var drawn = ScreenViewTests
            .Parts(ScreenViewTests.Read(plan, ScreenKind.Plan, new() { Colour = colour }))
            .ToDictionary(p => (string)p.Attribute("data-part")!, p => (string)p.Attribute("class")!);
        foreach (var pot in plan.Feed.Pots)
        {
            var step = scale.StepOf(scale.Value(pot.Flow, pot.Pressure));
            Assert.EndsWith(
                string.Create(CultureInfo.InvariantCulture, $" step-{step}"),
                drawn[string.Create(CultureInfo.InvariantCulture, $"pot-{pot.Row}-{pot.Pot}")],
                StringComparison.Ordinal
            );
        }
    }

    private static Plan WithFlows(double low, double high)
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var pots = plan.Feed.Pots.Select((p, i) => p with { Flow = i == 0 ? low : high - (i % 3 * (high - low) / 4) });
        return plan with { Feed = plan.Feed with { Pots = [.. pots] } };
    }
}
