using CsCheck;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;

namespace Dripwright.Engine.Tests.Nutrients.Loop;

public class LoopLawTests
{
    private const Constituent Ion = Constituent.Potassium;

    private sealed record Case(
        double Reservoir,
        double Pots,
        double Feed,
        double Water,
        double Bleed,
        double R,
        double P,
        double MakeUp,
        double Constant,
        double Proportion
    )
    {
        public LoopSystem System => new(Reservoir, Pots, Feed);

        public LoopState State => new(One(R), One(P));

        public LoopUptake Uptake => new(1, Water, One(Constant), One(Proportion));

        public LoopStep Run(double days) => LoopDay.Run(System, State, Uptake, One(MakeUp), Bleed, days);
    }

    private static readonly Gen<Case> s_any = Gen.Select(
            Gen.Double[0.02, 0.5],
            Gen.Double[0.01, 0.3],
            Gen.Double[0.05, 0.5],
            Gen.Double[0, 0.9],
            Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.02]),
            Gen.Double[0, 15],
            Gen.Double[0, 15],
            Gen.Double[0, 12]
        )
        .SelectMany(a =>
            Gen.Select(
                Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 12]),
                Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 1.5]),
                (constant, proportion) =>
                    new Case(
                        a.Item1,
                        a.Item2,
                        a.Item3,
                        a.Item3 * a.Item4,
                        a.Item5,
                        a.Item6,
                        a.Item7,
                        a.Item8,
                        constant,
                        proportion
                    )
            )
        );

    [Fact]
    public void No_ion_is_made_or_lost() =>
        Gen.Select(s_any, Gen.Double[0.1, 60])
            .Holds(
                (c, days) =>
                {
                    var step = c.Run(days);
                    var before = (c.Reservoir * c.R) + (c.Pots * c.P);
                    var after = (c.Reservoir * step.State.Reservoir[Ion]) + (c.Pots * step.State.Pots[Ion]);
                    var scale = 1 + before + step.MadeUp[Ion];
                    Assert.Equal(before + step.MadeUp[Ion] - step.TakenUp[Ion] - step.Bled[Ion], after, 1e-9 * scale);
                    Assert.True(step.State.Reservoir[Ion] >= 0 && step.State.Pots[Ion] >= 0);
                }
            );

    [Fact]
    public void One_long_stretch_is_many_short_ones() =>
        Gen.Select(s_any, Gen.Int[2, 12])
            .Holds(
                (c, parts) =>
                {
                    var whole = c.Run(parts);
                    var state = c.State;
                    double taken = 0;
                    for (var i = 0; i < parts; i++)
                    {
                        var part = LoopDay.Run(c.System, state, c.Uptake, One(c.MakeUp), c.Bleed);
                        state = part.State;
                        taken += part.TakenUp[Ion];
                    }

                    Assert.Equal(state.Reservoir[Ion], whole.State.Reservoir[Ion], 1e-6);
                    Assert.Equal(state.Pots[Ion], whole.State.Pots[Ion], 1e-6);
                    Assert.Equal(taken, whole.TakenUp[Ion], 1e-6);
                }
            );

    [Fact]
    public void A_loop_twice_as_large_with_twice_the_flows_runs_the_same() =>
        s_any.Holds(c =>
        {
            var one = c.Run(5);
            var twice = c with
            {
                Reservoir = 2 * c.Reservoir,
                Pots = 2 * c.Pots,
                Feed = 2 * c.Feed,
                Water = 2 * c.Water,
                Bleed = 2 * c.Bleed,
            };
            var two = twice.Run(5);
            Assert.Equal(one.State.Reservoir[Ion], two.State.Reservoir[Ion], 1e-9);
            Assert.Equal(2 * one.TakenUp[Ion], two.TakenUp[Ion], 1e-9);
        });

    [Fact]
    public void A_finely_stepped_sum_agrees_with_the_exact_answer()
    {
        var c = new Case(0.2, 0.08, 0.12, 0.04, 0.005, 6, 9, 5, 4, 0.3);
        double r = 6;
        double p = 9;
        const int steps = 200_000;
        var dt = 20.0 / steps;
        for (var i = 0; i < steps; i++)
        {
            var dr = ((-0.12 * r) + (0.08 * p) + (0.045 * 5) - (0.005 * r)) / 0.2;
            var dp = ((0.12 * r) - (0.08 * p) - (0.04 * (4 + (0.3 * p)))) / 0.08;
            r += dr * dt;
            p += dp * dt;
        }

        var exact = c.Run(20);
        Assert.Equal(r, exact.State.Reservoir[Ion], 0.001);
        Assert.Equal(p, exact.State.Pots[Ion], 0.001);
    }

    [Fact]
    public void When_an_ion_runs_out_plants_get_what_drips_in_and_it_is_said()
    {
        var c = new Case(0.2, 0.05, 0.1, 0.05, 0, 2, 2, 1, 10, 0);
        var step = c.Run(30);
        Assert.Contains(Ion, step.Wanting);
        Assert.Equal(0, step.State.Pots[Ion]);
        // In the end the plants take what the make-up brings.
        Assert.Equal(0.05 * 1 / 0.1, step.State.Reservoir[Ion], 1e-3);
        Assert.True(step.TakenUp[Ion] < 0.05 * 30 * 10);
    }

    [Fact]
    public void The_bleed_reckoned_holds_the_limit_in_the_loop()
    {
        // Nobody takes sodium; bled from a reservoir that goes round fast.
        // What comes in with the make-up goes out with the bleed: 1.5 (1 + b) = 8 b.
        var ratio = 1.5 / (8 - 1.5);
        var c = new Case(0.2, 0.02, 40, 0.04, ratio * 0.04, 1.5, 1.5, 1.5, 0, 0);
        Assert.Equal(8, c.Run(2000).State.Reservoir[Ion], 0.02);
    }

    private static Composition One(double amount) => Composition.Of((Ion, amount));
}
