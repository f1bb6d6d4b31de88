using System.Globalization;
using CsCheck;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Tests.Rigs;

namespace Dripwright.Engine.Tests.Water.Dose;

/// <summary>Each plant's drink: what the clock gives it, and what a grower would say of that.</summary>
public sealed class DoseTests
{
    private const double Litre = 1e-3;

    [Fact]
    public void A_pot_is_given_its_flow_for_as_long_as_water_comes()
    {
        // By hand: 14 h of 15 min on, 45 min off are 14 waterings.
        var plan = Plans.From("""{ "rows": [ { "pots": 10 } ] }""");
        var dose = plan.Dose;
        Assert.Equal(14, dose.Waterings, 1e-12);
        Assert.InRange(dose.FillTime, 1, 60);
        foreach (var pot in dose.Pots)
        {
            Assert.Equal(14 * (900 - dose.FillTime) * pot.Flow, pot.Given, 1e-12);
        }
    }

    [Fact]
    public void A_pump_that_never_stops_gives_a_day_of_its_flow()
    {
        var plan = Plans.From("""{ "timer": { "mode": "continuous" } }""");
        Assert.Equal(0, plan.Dose.FillTime);
        Assert.All(plan.Dose.Pots, pot => Assert.Equal(86_400 * pot.Flow, pot.Given, 1e-12));
    }

    [Fact]
    public void A_check_valve_keeps_the_lines_full_so_that_short_pulses_count_whole()
    {
        const string Short = """{ "timer": { "on": "1 min", "off": "29 min" }, "feed": { "checkValve": VALVE } }""";
        var open = Plans.From(Short.Replace("VALVE", "false", StringComparison.Ordinal));
        var held = Plans.From(Short.Replace("VALVE", "true", StringComparison.Ordinal));
        Assert.True(open.Dose.FillTime > held.Dose.FillTime);
        Assert.True(open.Dose.Thirstiest!.Given < held.Dose.Thirstiest!.Given);
    }

    [Fact]
    public void Two_plants_drink_twice_what_one_drinks()
    {
        var plan = Plans.From(
            """{ "rows": [ { "pots": 2, "planting": [ { "pots": "1", "crop": "tomato" }, { "pots": "2", "crop": "tomato", "plants": 2 } ] } ] }"""
        );
        Assert.Equal(2 * plan.Dose.Pots[0].HotDay, plan.Dose.Pots[1].HotDay, 1e-15);
        Assert.Same(plan.Dose.Pots[1], plan.Dose.Thirstiest);
    }

    // What is given does not hang on what is drunk, so the drink is put just beside each limit.
    [Theory]
    [InlineData(2.02, "plants-starve", FindingLevel.Stop)]
    [InlineData(1.98, "plants-thirst", FindingLevel.Mend)]
    [InlineData(1.01, "plants-thirst", FindingLevel.Mend)]
    [InlineData(0.99, "drain-share-low", FindingLevel.Mend)]
    [InlineData(0.76, "drain-share-low", FindingLevel.Mend)]
    [InlineData(0.74, null, null)]
    public void On_either_side_of_each_limit_the_verdict_is_another(double drink, string? rule, FindingLevel? level)
    {
        const string Timer = """ "timer": { "on": "3 min", "off": "45 min" } """;
        var given = Plans.From($"{{ {Timer} }}").Dose.Pots.Min(p => p.Given) / Litre;
        var use = (drink * given).ToString("0.0000", CultureInfo.InvariantCulture);
        var plan = Plans.From($$"""{ {{Timer}}, "reservoir": { "usePerPlant": "{{use}} L/day" } }""");
        var said = plan.Findings.SingleOrDefault(f =>
            f.Rule is "plants-starve" or "plants-thirst" or "drain-share-low"
        );
        Assert.Equal(rule, said?.Rule);
        Assert.Equal(level, said?.Level);
    }

    [Fact]
    public void A_pot_behind_a_shut_valve_is_not_watered_by_its_neighbours()
    {
        var plan = Plans.From(
            """
            {
              "feed": { "inlineValves": true },
              "rows": [ { "pots": 3, "planting": [ { "pots": "1-2", "crop": "tomato" }, { "pots": "3", "crop": "tomato", "valveOpen": "0 %" } ] } ]
            }
            """
        );
        var said = plan.Said("valves-shut")!;
        Assert.Equal(FindingLevel.Stop, said.Level);
        Assert.Equal((1, 3), (said.Places[0].Row, said.Places[0].Pot));
        Assert.DoesNotContain(plan.Dose.Pots, pot => pot.Pot == 3);
        Assert.Equal("rows[0].planting[1].valveOpen", Assert.Single(Assert.Single(said.Cures).Changes).Field);
    }

    [Fact]
    public void A_row_too_high_for_the_pump_is_told_the_true_cause()
    {
        var plan = Plans.From(
            """{ "site": { "roomHeight": "20 ft" }, "rows": [ { "pots": 4 }, { "pots": 4, "floorLevel": "9 ft" } ] }"""
        );
        var said = plan.Said("pot-dry")!;
        Assert.Equal(2, said.Places.Single().Row);
        Assert.Equal("pump.model", said.Fields[0]);
        // One cause, one finding: the pressure of an emitter that gives nothing is not judged as well.
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "emitter-under-range" && f.Places.Any(p => p.Row == 2));
    }

    [Theory]
    [InlineData(""" "feed": { "throttle": "0 %" } """, "feed.throttle")]
    [InlineData(""" "feed": { "bypass": "100 %" } """, "feed.bypass")]
    [InlineData(
        """ "site": { "roomHeight": "20 ft" }, "rows": [ { "pots": 4 }, { "pots": 4, "floorLevel": "5 ft" } ] """,
        "pump.model"
    )]
    public void Dry_pots_are_told_what_keeps_them_dry_and_the_cure_waters_them(string rig, string field)
    {
        var plan = Plans.From($"{{ {rig} }}");
        var said = plan.Said("no-water") ?? plan.Said("pot-dry")!;
        Assert.Equal(field, said.Fields[0]);
        var cure = Assert.Single(said.Cures);
        Assert.Equal(field, Assert.Single(cure.Changes).Field);
        var trial = CureTrial.Of(plan, said, cure, new PlanOptions { Draws = 0 });
        Assert.True(trial.Cured);
        Assert.DoesNotContain(trial.New, f => f.Level == FindingLevel.Stop);
        Assert.DoesNotContain(trial.After!.Feed.Pots, p => p.Planted && p.Flow <= 0);
    }

    [Fact]
    public void A_drum_that_is_never_shut_empties_in_hours_and_is_not_said_to_last_days()
    {
        // Eight pots at some 0.7 gph each, day and night, out of 16 gal: three hours.
        const string Drum = """
            {
              "rows": [ { "pots": 8 } ], "feed": { "emitter": "drip-turbulent-1gph" }, "drain": { "into": "catch-tank" },
              "reservoir": { "tank": "tank-box-35-gal", "base": "6 ft" }, "pump": { "model": "none" },
              "timer": { "mode": "continuous" }
            }
            """;
        var plan = Plans.From(Drum);
        var hours = 24 * plan.Reservoir.Days!.Value;
        Assert.Equal(plan.Reservoir.WorkingVolume / plan.Feed.TotalFlow / 3600, hours, 1e-9);
        Assert.InRange(hours, 2, 5);

        var said = plan.Said("reservoir-runs-out")!;
        var cure = Assert.Single(said.Cures);
        Assert.Equal(["timer.mode", "timer.on"], cure.Changes.Select(c => c.Field));
        var trial = CureTrial.Of(plan, said, cure, new PlanOptions { Draws = 0 });
        Assert.True(trial.Cured);
        Assert.DoesNotContain(trial.New, f => f.Level != FindingLevel.Note);
        Assert.True(trial.After!.Dose.Thirstiest!.Share >= 1);
    }

    [Fact]
    public void Water_that_comes_back_by_itself_lasts_as_long_as_plants_drink()
    {
        var plan = Plans.From("""{ "timer": { "mode": "continuous" } }""");
        Assert.Equal(plan.Reservoir.Use, plan.Reservoir.Leaves, 1e-15);
    }

    [Fact]
    public void Nobody_is_told_to_buy_another_pump_than_their_own()
    {
        var plan = Plans.From("""{ "pump": { "shutOffHead": "1 ft", "openFlow": "100 gph" } }""");
        Assert.Empty(plan.Said("no-water")!.Cures);
    }

    [Fact]
    public void The_default_rig_of_any_count_gives_every_plant_its_drink() =>
        Assert.All(
            Enumerable.Range(1, 20),
            pots =>
            {
                var plan = Plans.From($$"""{ "rows": [ { "pots": {{pots}} } ] }""");
                Assert.True(plan.Dose.Thirstiest!.Share >= 1, $"{pots} pots: {plan.Dose.Thirstiest}");
            }
        );

    [Fact]
    public void A_longer_watering_never_gives_a_pot_less() =>
        Gen.Select(RigGen.Rigs, Gen.Double[1, 4])
            .Holds(
                (rig, more) =>
                {
                    var longer = rig with { Timer = rig.Timer with { On = Math.Min(86_400, rig.Timer.On * more) } };
                    var before = Plans.Of(rig).Dose.Pots;
                    var after = Plans.Of(longer).Dose.Pots;
                    Assert.Equal(before.Count, after.Count);
                    Assert.All(before.Zip(after), p => Assert.True(p.Second.Given >= p.First.Given * (1 - 1e-9)));
                },
                iter: 20
            );

    [Fact]
    public void Pots_are_given_no_more_than_the_pump_gives() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                var clock = plan.Layout.Resolved.Clock;
                var filled = plan.Feed.Stop.BackToTank + plan.Feed.Stop.ThroughEmitters;
                var running = Math.Max(0, clock.SecondsPerDay - (clock.Waterings * plan.Dose.FillTime));
                var pumped = (running * plan.Feed.TotalFlow) + (clock.Waterings * filled);
                Assert.True(plan.Dose.Pots.Sum(p => p.Given) <= pumped * (1 + 1e-9));
            },
            iter: 40
        );
}
