using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Planning;

public sealed class PlannerTests
{
    [Fact]
    public void Any_valid_rig_gets_a_plan_that_keeps_mass_and_energy_and_holds_no_silly_number()
    {
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                Assert.True(plan.Feed.Solved, plan.Feed.Trouble.Told());
                Assert.InRange(plan.Feed.MassResidual, 0, 1e-9);
                Assert.InRange(plan.Feed.EnergyResidual, 0, 1e-6);
                Assert.All(plan.Feed.Emitters, e => Assert.True(e.Flow >= 0 && double.IsFinite(e.Flow)));
                Assert.All(plan.Feed.Lines.SelectMany(l => l.Points), p => Assert.True(double.IsFinite(p.Pressure)));
                Assert.All(plan.Drain.Runs, r => Assert.InRange(r.DeepestRatio, 0, 1));
                Assert.True(double.IsFinite(plan.Drain.MouthOverRim));
                Assert.True(plan.Reservoir.Overflow >= 0 && plan.Reservoir.RunningLevel >= 0);
                Assert.All(plan.Findings, f => Assert.DoesNotContain("NaN", f.Told().ToString()));
            },
            iter: 50
        );
    }

    [Fact]
    public void A_level_drain_has_no_capacity_by_slope_but_a_margin()
    {
        var plan = Plans.From("""{ "drain": { "slope": "0 %" } }""");
        Assert.All(
            plan.Drain.Runs,
            r =>
            {
                Assert.Equal(0, r.Capacity);
                Assert.True(r.Margin > 1 && r.DeepestRatio < 1);
            }
        );
    }

    [Theory]
    [InlineData("pot-square-11-l")]
    [InlineData("pot-square-3-gal")]
    public void The_sump_of_a_pot_follows_its_leaning_walls(string key)
    {
        var plan = Plans.From($$"""{ "rows": [ { "pot": "{{key}}" } ] }""");
        var pot = PartsCatalogue.Default.Pots[key];
        var sump = Assert.Single(plan.Drain.Pots).SumpVolume;
        // Three tenths of the substrate are water that stands free.
        Assert.Equal(0.3 * pot.VolumeBelow(pot.DrainHeight), sump, 1e-12);
        Assert.True(sump < 0.3 * pot.Volume * pot.DrainHeight / pot.Height, "narrower below");
    }

    [Fact]
    public void What_the_pots_get_is_what_the_source_gives_less_the_bypass_and_the_break_hole()
    {
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                var pots = plan.Feed.Pots.Sum(p => p.Flow);
                var first = plan.Feed.Runs.First(r => r.From == "pump");
                var spouted = plan.Feed.BreakHole?.Flow ?? 0;
                var balance = first.Flow - plan.Feed.BypassFlow - spouted - pots;
                Assert.InRange(Math.Abs(balance), 0, 1e-9 * Math.Max(pots, 1e-9));
            },
            iter: 40
        );
    }

    [Fact]
    public void A_plan_completed_later_is_the_plan_made_at_once()
    {
        var sketch = Planner.Of(
            Plans.From("""{ "rows": [{ "pots": 7 }, { "pots": 4 }] }""").Rig,
            [],
            PartsCatalogue.Default,
            new PlanOptions { Draws = 0, Strength = false }
        );
        var whole = new PlanOptions { Draws = 200 };
        var atOnce = Planner.Of(sketch.Rig, [], PartsCatalogue.Default, whole);
        var later = Planner.Completed(Planner.Completed(sketch, new PlanOptions { Draws = 0 }), whole);
        Assert.Null(sketch.Stand);
        Assert.NotNull(later.Stand);
        Assert.Equal(PlanJson.Write(atOnce), PlanJson.Write(later));
    }

    [Fact]
    public void A_plan_that_nobody_wants_any_more_is_broken_off_also_within_the_stand_and_the_draws()
    {
        var sketch = Planner.Of(
            Plans.From("""{ "rows": [{ "pots": 4 }] }""").Rig,
            [],
            PartsCatalogue.Default,
            new PlanOptions { Draws = 0, Strength = false }
        );
        var late = new PlanOptions { Stop = new CancellationToken(canceled: true) };
        Assert.ThrowsAny<OperationCanceledException>(() => Planner.Of(sketch.Rig, [], PartsCatalogue.Default, late));
        Assert.ThrowsAny<OperationCanceledException>(() => Planner.Completed(sketch, late with { Draws = 0 }));
        Assert.ThrowsAny<OperationCanceledException>(() => Planner.Completed(sketch, late with { Strength = false }));
    }

    [Fact]
    public void The_same_rig_shown_in_other_units_has_the_same_numbers()
    {
        RigGen.Rigs.Holds(
            rig =>
            {
                var us = Plans.Of(rig with { Units = UnitSystem.Us });
                var metric = Plans.Of(rig with { Units = UnitSystem.Metric });
                Assert.Equal(us.Feed.Emitters, metric.Feed.Emitters);
                Assert.Equal(us.Reservoir, metric.Reservoir);
                // Cures are texts of the rig file and so in its units; all else is the same value.
                Assert.Equal(Uncured(us), Uncured(metric));
            },
            iter: 30
        );
    }

    private static IEnumerable<Finding> Uncured(Plan plan) => plan.Findings.Select(f => f with { Cures = [] });

    [Fact]
    public void A_rig_written_in_inches_and_the_same_in_millimetres_flow_alike()
    {
        const string inches = """
            { "rows": [ { "pots": 12, "spacing": "10 in", "moduleLength": "60 in", "standHeight": "25 in" } ],
              "feed": { "microtubeLength": "8 in" }, "drain": { "belowPots": "1 in" }, "reservoir": { "gap": "10 in" } }
            """;
        const string millimetres = """
            { "rows": [ { "pots": 12, "spacing": "254 mm", "moduleLength": "1524 mm", "standHeight": "635 mm" } ],
              "feed": { "microtubeLength": "203.2 mm" }, "drain": { "belowPots": "25.4 mm" }, "reservoir": { "gap": "254 mm" } }
            """;
        var one = Plans.From(inches);
        var other = Plans.From(millimetres);
        Assert.All(
            one.Feed.Emitters.Zip(other.Feed.Emitters),
            pair => Assert.Equal(pair.First.Flow, pair.Second.Flow, 1e-15)
        );
        Assert.Equal(one.Drain.MouthOverRim, other.Drain.MouthOverRim, 1e-12);
    }

    [Fact]
    public void A_second_row_alike_takes_from_each_emitter_no_more_than_the_header_loses()
    {
        Gen.Select(Gen.Int[2, 30], Gen.Int[1, 4])
            .Holds(
                (pots, emitters) =>
                {
                    string json(int count) =>
                        FormattableString.Invariant(
                            $$"""
                            { "rows": [ { "pots": {{pots}}, "count": {{count}} } ],
                              "feed": { "emittersPerPot": {{emitters}}, "emitter": "drip-turbulent-0.5gph" } }
                            """
                        );
                    var one = Plans.From(json(1));
                    var two = Plans.From(json(2));
                    var alone = one.Feed.Emitters[0].Flow;
                    var shared = two.Feed.Emitters[0].Flow;
                    var headAlone = one.Feed.Emitters[0].Pressure;
                    var headShared = two.Feed.Emitters[0].Pressure;
                    // Square-root emitters: the flow's loss is that of the pressure's root, and nothing else.
                    Assert.True(shared <= alone);
                    Assert.Equal(Math.Sqrt(headShared / headAlone), shared / alone, 1e-6);
                    double header(Plan plan) => plan.Feed.Runs.First(r => r.From == "pump").HeadLoss;
                    double pump(Plan plan) => plan.Feed.OperatingPoint!.Head;
                    var lost = header(two) - header(one) + pump(one) - pump(two);
                    Assert.True((headAlone - headShared) / 9789 <= lost + 0.02);
                },
                iter: 30
            );
    }

    [Fact]
    public void More_slope_never_deepens_the_drain()
    {
        Gen.Select(Gen.Int[1, 40], Gen.Double[0, 0.05], Gen.Double[0, 0.05])
            .Holds(
                (pots, one, other) =>
                {
                    var gentle = Math.Min(one, other) * 100;
                    var steep = Math.Max(one, other) * 100;
                    double deepest(double slope) =>
                        Plans
                            .From(
                                FormattableString.Invariant(
                                    $$"""{ "rows": [ { "pots": {{pots}} } ], "drain": { "slope": "{{slope:F6}} %", "into": "catch-tank" } }"""
                                )
                            )
                            .Drain.Runs.Max(r => r.DeepestRatio);
                    Assert.True(deepest(steep) <= deepest(gentle) + 1e-6);
                },
                iter: 20
            );
    }

    [Fact]
    public void A_small_pump_does_not_open_compensating_emitters_and_the_plan_says_what_would()
    {
        var plan = Plans.From("""{ "feed": { "emitter": "drip-pc-1gph" }, "pump": { "model": "pump-400gph" } }""");
        var said = Assert.IsType<Finding>(plan.Said("emitter-under-range"));
        Assert.Contains("more head", said.Told().Remedy, StringComparison.Ordinal);
        Assert.Contains("do not compensate", said.Told().Remedy, StringComparison.Ordinal);
        // The label says 1 gph; what the plan counts is far less.
        Assert.True(plan.Feed.Emitters[0].Flow < 0.7 * 3785.411784e-6 / 3600);

        var strong = Plans.From(
            """{ "feed": { "emitter": "drip-pc-1gph" }, "pump": { "model": "pump-booster-15psi" } }"""
        );
        Assert.Null(strong.Said("emitter-under-range"));
    }

    [Fact]
    public void A_raised_reservoir_feeds_without_a_pump()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 6 } ], "reservoir": { "base": "6 ft" }, "pump": { "model": "none" },
              "drain": { "into": "catch-tank" } }
            """
        );
        Assert.Null(plan.Feed.OperatingPoint);
        Assert.True(plan.Feed.TotalFlow > 0);
        Assert.True(plan.Feed.TotalFlowAtLowest < plan.Feed.TotalFlow);
    }

    [Fact]
    public void A_pump_too_weak_to_lift_gives_no_water_and_the_plan_says_so()
    {
        var plan = Plans.From("""{ "pump": { "shutOffHead": "1 ft", "openFlow": "100 gph" } }""");
        Assert.True(plan.Feed.Solved);
        Assert.Equal(0, plan.Feed.TotalFlow);
        Assert.NotNull(plan.Said("no-water"));
    }

    [Fact]
    public void Water_in_a_high_line_runs_out_through_low_emitters_when_the_pump_stops()
    {
        const string rows = """
            "rows": [ { "pots": 6 }, { "pots": 6, "floorLevel": "4 ft" } ], "pump": { "model": "pump-1200gph" }
            """;
        var held = Plans.From($$"""{ {{rows}}, "feed": { "checkValve": true } }""");
        var open = Plans.From($$"""{ {{rows}}, "feed": { "checkValve": false } }""");
        Assert.True(held.Feed.Stop.ThroughEmitters > 0);
        Assert.Equal(0, held.Feed.Stop.BackToTank);
        Assert.True(open.Feed.Stop.BackToTank > 0);
        Assert.All(
            (Plan[])[held, open],
            p =>
                Assert.Equal(
                    p.Feed.Stop.LineVolume,
                    p.Feed.Stop.ThroughEmitters + p.Feed.Stop.BackToTank + p.Feed.Stop.Stays,
                    1e-12
                )
        );
        Assert.Equal([1], held.Feed.Stop.LowRows);
    }

    [Fact]
    public void Closing_the_emitters_of_empty_pots_gives_the_planted_ones_more()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 20, "planting": [ { "pots": "1-4" } ] } ], "pump": { "model": "pump-250gph" },
              "feed": { "emitter": "drip-adjustable-10gph" } }
            """
        );
        var effect = Assert.IsType<EmptyPotEffect>(plan.Feed.EmptyPots);
        Assert.Equal(16, effect.EmptyPots);
        Assert.True(effect.PlantedFlowShut > effect.PlantedFlowOpen);
        Assert.True(effect.WastedOpen > 0);
    }

    [Fact]
    public void A_bypass_lowers_what_the_emitters_get_and_comes_back_to_the_tank()
    {
        var without = Plans.From("{ }");
        var with = Plans.From("""{ "feed": { "bypass": "50 %" } }""");
        Assert.True(with.Feed.BypassFlow > 0);
        Assert.True(with.Feed.TotalFlow < without.Feed.TotalFlow);
        Assert.True(with.Feed.OperatingPoint!.Flow > without.Feed.OperatingPoint!.Flow);
    }

    [Fact]
    public void The_working_point_lies_on_both_curves()
    {
        var plan = Plans.From("""{ "rows": [ { "pots": 40 } ] }""");
        var point = plan.Feed.OperatingPoint!;
        double On(IReadOnlyList<CurvePoint> curve)
        {
            var i = Enumerable.Range(1, curve.Count - 1).First(k => curve[k].Flow >= point.Flow);
            var share = (point.Flow - curve[i - 1].Flow) / (curve[i].Flow - curve[i - 1].Flow);
            return curve[i - 1].Head + (share * (curve[i].Head - curve[i - 1].Head));
        }

        // Both curves are drawn as chords, so they are met to about a hundredth of the shut-off head.
        var hundredth = 0.01 * plan.Feed.PumpCurve[0].Head;
        Assert.Equal(point.Head, On(plan.Feed.PumpCurve), hundredth);
        Assert.Equal(point.Head, On(plan.Feed.SystemCurve), 5 * hundredth);
    }

    [Fact]
    public void The_same_rig_gives_the_same_plan_twice()
    {
        var one = Plans.From("{ }", draws: 500);
        var two = Plans.From("{ }", draws: 500);
        Assert.Equal(one.Feed.Emitters, two.Feed.Emitters);
        Assert.Equal(one.Feed.Scatter!.ChanceOfWeakPot, two.Feed.Scatter!.ChanceOfWeakPot);
        Assert.Equal(one.Findings, two.Findings);
    }

    [Theory]
    [InlineData("end")]
    [InlineData("middle")]
    [InlineData("both-ends")]
    [InlineData("loop")]
    public void Every_way_into_a_row_feeds_all_its_pots(string entry)
    {
        var plan = Plans.From($$"""{ "rows": [ { "pots": 9, "count": 2 } ], "feed": { "entry": "{{entry}}" } }""");
        Assert.Equal(18, plan.Feed.Pots.Count(p => p.Flow > 0));
        Assert.Equal(36, plan.Feed.Emitters.Count);
    }

    [Fact]
    public void Feeding_from_both_ends_is_more_even_than_from_one()
    {
        double Least(string entry)
        {
            var plan = Plans.From(
                $$"""
                { "rows": [ { "pots": 80 } ], "pump": { "model": "pump-1200gph" },
                  "feed": { "entry": "{{entry}}", "emitter": "drip-turbulent-2gph" } }
                """
            );
            return plan.Feed.Emitters.Min(e => e.Flow) / plan.Feed.Emitters.Max(e => e.Flow);
        }

        var end = Least("end");
        Assert.True(Least("middle") > end);
        Assert.True(Least("both-ends") > end);
        Assert.True(Least("loop") > end);
    }

    [Fact]
    public void A_full_run_of_five_thousand_pots_is_planned()
    {
        var plan = Plans.From(
            """
            { "site": { "roomLength": "1000 ft", "roomWidth": "500 ft" }, "rows": [ { "pots": 100, "count": 50 } ],
              "pump": { "shutOffHead": "60 ft", "openFlow": "20000 gph" }, "feed": { "header": { "pipe": "pvc40-2" } } }
            """
        );
        Assert.True(plan.Feed.Solved);
        Assert.Equal(5000, plan.Feed.Pots.Count(p => p.Flow > 0));
    }
}
