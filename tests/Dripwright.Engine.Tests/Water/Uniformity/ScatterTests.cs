using CsCheck;
using Dripwright.Engine.Water;

namespace Dripwright.Engine.Tests.Water;

public class ScatterTests
{
    private static ScatterResult Draw(ScatterModel model) => Scatter.Run(model, TestContext.Current.CancellationToken);

    private static ScatterModel Row(int pots, int perPot, double variation, double flow = 1e-6) =>
        new()
        {
            Emitters =
            [
                .. Enumerable
                    .Range(0, pots * perPot)
                    .Select(i => new ScatterEmitter(flow / perPot, i / perPot, 0.5, variation)),
            ],
            Draws = 4000,
            Seed = 20,
        };

    [Fact]
    public void No_variation_gives_no_scatter()
    {
        var result = Draw(Row(10, 2, 0));
        Assert.Equal(0, result.ChanceOfWeakPot);
        Assert.Equal(1, result.WeakestRatio.Least, 12);
        Assert.Equal(1, result.LowQuarter.Greatest, 12);
        Assert.Equal(0, result.WeakestRatio.StandardDeviation, 12);
        Assert.Single(result.WeakestRatio.Bins.Counts);
    }

    [Fact]
    public void The_number_of_threads_changes_nothing() =>
        Gen.Select(Gen.Int[1, 12], Gen.Int[1, 3], Gen.Double[0, 0.2], Gen.ULong)
            .Holds(
                (pots, perPot, variation, seed) =>
                {
                    var model = Row(pots, perPot, variation) with
                    {
                        Draws = 333,
                        Seed = seed,
                        Clogging = new Clogging(0.1, 0.2, 0.9),
                    };
                    var one = Draw(model with { Threads = 1 });
                    var two = Draw(model with { Threads = 2 });
                    Assert.Equivalent(one, two, strict: true);
                },
                iter: 30
            );

    [Fact]
    public void Another_seed_gives_another_sample_of_the_same_law()
    {
        var one = Draw(Row(10, 2, 0.08));
        var other = Draw(Row(10, 2, 0.08) with { Seed = 21 });
        Assert.NotEqual(one.WeakestRatio.Mean, other.WeakestRatio.Mean);
        Assert.Equal(
            one.WeakestRatio.Mean,
            other.WeakestRatio.Mean,
            6 * one.WeakestRatio.StandardDeviation / Math.Sqrt(4000)
        );
    }

    [Fact]
    public void More_emitters_to_a_pot_make_the_row_more_even()
    {
        var medians = new[] { 1, 2, 4, 8 }.Select(perPot => Draw(Row(10, perPot, 0.1)).WeakestRatio.Median).ToList();
        Assert.Equal(medians.Order(), medians);
        Assert.True(medians[0] < medians[3]);
    }

    [Fact]
    public void The_makers_variation_is_found_again_in_the_draws()
    {
        // With many pots the low quarter of a normal law is 1 - 1.271 Cv, and CU is 1 - 0.798 Cv.
        var result = Draw(Row(400, 1, 0.1) with { Draws = 400 });
        var error = 4 * result.LowQuarter.StandardDeviation / Math.Sqrt(400);
        // The cut at four deviations and the finite row take less than a thousandth.
        Assert.Equal(1 - 1.271 * 0.1, result.LowQuarter.Mean, error + 1e-3);
        Assert.Equal(1 - 0.798 * 0.1, result.Christiansen.Mean, error + 1e-3);
    }

    [Fact]
    public void The_scale_of_flow_does_not_matter()
    {
        var small = Draw(Row(8, 2, 0.1));
        // A power of two, so that not even the last bit differs.
        var large = Draw(Row(8, 2, 0.1, 1e-6 * 1024));
        Assert.Equivalent(small, large, strict: true);
    }

    [Fact]
    public void Equal_pots_are_the_weakest_equally_often()
    {
        var result = Draw(Row(10, 2, 0.1));
        Assert.Equal(1, result.ChanceOfBeingWeakest.Sum(), 1e-12);
        Assert.All(result.ChanceOfBeingWeakest, chance => Assert.Equal(0.1, chance, 0.03));
    }

    [Fact]
    public void Clogging_makes_short_pots_likelier()
    {
        var clean = Draw(Row(10, 2, 0.05));
        var dirty = Draw(Row(10, 2, 0.05) with { Clogging = new Clogging(0.1, 0.2, 0.6) });
        Assert.True(dirty.ChanceOfWeakPot > clean.ChanceOfWeakPot + 0.5);
    }

    [Fact]
    public void All_shut_is_counted_as_weak_in_every_rig()
    {
        var result = Draw(Row(3, 1, 0) with { Clogging = new Clogging(1, 0, 0) });
        Assert.Equal(1, result.ChanceOfWeakPot);
        Assert.Equal(0, result.LowQuarter.Mean);
    }

    [Fact]
    public void A_solver_that_leaves_pressures_alone_changes_nothing()
    {
        var model = Row(6, 2, 0.1);
        var resolved = model with
        {
            Resolve = (factors, flows) =>
            {
                for (var i = 0; i < factors.Length; i++)
                {
                    flows[i] = model.Emitters[i].Flow * factors[i];
                }
            },
        };
        Assert.Equivalent(Draw(model), Draw(resolved), strict: true);
    }

    [Fact]
    public void Bins_count_every_draw_once() => Assert.Equal(4000, Draw(Row(10, 2, 0.1)).LowQuarter.Bins.Counts.Sum());

    [Fact]
    public void A_pot_without_an_emitter_is_refused()
    {
        var model = new ScatterModel
        {
            Emitters = [new ScatterEmitter(1, 0, 0.5, 0.1), new ScatterEmitter(1, 2, 0.5, 0.1), new(1, 2, 0.5, 0)],
        };
        Assert.Throws<ArgumentOutOfRangeException>(() => Draw(model));
        Assert.Throws<ArgumentOutOfRangeException>(() => Draw(Row(2, 1, 0.1) with { Draws = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Draw(Row(2, 1, 0.3)));
    }
}
