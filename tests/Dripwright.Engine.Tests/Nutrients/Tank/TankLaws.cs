using CsCheck;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Tests.Planning;

namespace Dripwright.Engine.Tests.Nutrients.Tank;

/// <summary>What holds of every instruction at a tank, whatever the water, the shelf, the scale and the reading.</summary>
public sealed class TankLaws
{
    private static readonly Gen<Plan> s_plans = Gen.Select(
        Gen.OneOf("tomato", "cucumber", "sweet-pepper", "lettuce", "strawberry"),
        Gen.OneOf(
            "{}",
            """{ "hardness": "250 mg/L as CaCO3", "alkalinity": "220 mg/L as CaCO3" }""",
            """{ "alkalinity": "50 mg/L as CaCO3", "calcium": "16 mg/L", "magnesium": "2.4 mg/L", "sodium": "7 mg/L", "chloride": "8 mg/L", "sulfate": "4 mg/L as SO4" }"""
        ),
        Gen.OneOf("none", "nitric-acid-60", "phosphoric-acid-85"),
        Gen.OneOf("1 g", "0.1 g", "0.01 g"),
        Gen.Int[0, 9],
        (crop, water, acid, step, pure) =>
            Plans.From(
                $$"""
                { "nutrients": { "crop": "{{crop}}", "water": {{water}}, "acid": "{{acid}}", "scaleStep": "{{step}}",
                  "pureShare": "{{10 * pure}} %" } }
                """
            )
    );

    private static readonly Gen<(Plan Plan, TankReading Reading)> s_tanks = Gen.Select(
        s_plans,
        Gen.Double[0.2, 3.5],
        Gen.Double[4.5, 8],
        Gen.Double[0.05, 1],
        (plan, ec, ph, share) => (plan, new TankReading(ec, ph, share * plan.Nutrients!.Volume))
    );

    [Fact]
    public void No_step_pours_nothing_and_the_steps_add_up_to_what_is_told() =>
        OfEach(
            (_, reading, tank) =>
            {
                Assert.All(tank.Steps, step => Assert.True(Measurable(step), $"{step.Kind} {step.Volume}"));
                Assert.Equal(tank.Water, Poured(tank, TankStepKind.Water), 1e-12);
                Assert.Equal(tank.Drained, Poured(tank, TankStepKind.Drain), 1e-12);
                Assert.Equal(reading.Volume - tank.Drained + tank.Water, tank.FinalVolume, 1e-9);
            }
        );

    [Fact]
    public void The_tank_is_never_filled_over_its_mark() =>
        OfEach(
            (plan, reading, tank) =>
            {
                var acid = tank.PH?.BottleVolume ?? 0;
                var mark = Math.Max(plan.Nutrients!.Volume, reading.Volume);
                Assert.True(tank.FinalVolume <= mark + TankCorrection.LeastWater + acid);
            }
        );

    [Fact]
    public void Every_element_of_the_recipe_is_in_what_is_weighed_and_taken_from_bottles() =>
        OfEach(
            (plan, _, tank) =>
                Holds(plan, tank.SaltsFor, tank.Steps.SelectMany(step => step.Weigh), [.. Composition.Constituents])
        );

    [Fact]
    public void Each_salt_is_given_once_in_each_go() =>
        OfEach(
            (_, _, tank) =>
                Assert.All(
                    tank.Steps,
                    step =>
                        Assert.Equal(
                            step.Weigh.Count,
                            step.Weigh.SelectMany(salt => salt.Name.Split(", ")).Distinct().Count()
                                - step.Weigh.Sum(salt => salt.Name.Split(", ").Length - 1)
                        )
                )
        );

    [Fact]
    public void All_steps_together_reach_the_strength_and_the_pH_that_are_told() =>
        OfEach(
            (plan, _, tank) =>
            {
                if (tank is { SaltsFor: > 0, Mixed: { } mixed })
                {
                    var reads = NutrientPlanner.EcOf(mixed, plan.Nutrients!.WantedPH).DecisiemensPerMetre;
                    Assert.Equal(tank.FinalEc, reads, 0.05);
                }

                if (tank.PH is not null)
                {
                    Assert.Equal(plan.Nutrients!.WantedPH, tank.PHAfterDay!.Value, 0.05);
                }
            }
        );

    [Fact]
    public void A_top_up_holds_every_element_and_the_acid_of_its_water() =>
        s_tanks.Holds(
            one =>
            {
                var (plan, reading) = one;
                var feed = plan.Nutrients!;
                var now = reading with
                {
                    Volume = 0.8 * feed.Volume,
                    DecisiemensPerMetre = feed.Ec.DecisiemensPerMetre,
                };
                var before = now with { Volume = feed.Volume };
                if (NutrientUptake.Between(plan, before, now, new PouredBetween()).Value is not { } advice)
                {
                    return;
                }

                var acids = feed.Recipe.Lines.Where(line => line.Salt.Kind == SaltKind.Acid).ToList();
                var told = advice.Salts.Where(salt => acids.Any(line => line.Salt.Name == salt.Name)).ToList();
                foreach (var line in acids.Where(line => line.Concentration * advice.Volume > 2e-3))
                {
                    Assert.Equal(line.Concentration * advice.Volume, told.Single().Weighed, 2e-4);
                }

                var units =
                    advice.Volume
                    * Math.Max(0, advice.Taken.DecisiemensPerMetre - feed.FilledEc.DecisiemensPerMetre)
                    / NutrientTank.SaltsAdd(feed);
                Holds(plan, units, advice.Salts.Except(told), [.. Composition.Constituents]);
            },
            iter: 25
        );

    private static void OfEach(Action<Plan, TankReading, TankPlan> law) =>
        s_tanks.Holds(
            one =>
            {
                if (NutrientTank.Correct(one.Plan, one.Reading).Value is { } tank)
                {
                    law(one.Plan, one.Reading, tank);
                }
            },
            iter: 25
        );

    // Each is given to a twentieth by scale or bottle, and a syringe's step more for the smallest doses.
    private static void Holds(Plan plan, double units, IEnumerable<WeighedSalt> given, Constituent[] elements)
    {
        var lines = plan.Nutrients!.Recipe.Lines.Where(line => line.Salt.Kind != SaltKind.Acid);
        var wanted = lines.Aggregate(
            Composition.Nothing,
            (sum, line) => sum + (line.Salt.Brings * (line.Concentration * units))
        );
        List<WeighedSalt> all = [.. given];
        var brought = all.Aggregate(Composition.Nothing, (sum, salt) => sum + salt.Brings);
        var least = all.Min(salt => salt.Bottle?.Take) ?? 1;
        foreach (var element in elements.Where(element => wanted[element] > 0 && all.Count > 0))
        {
            var room = 0.06 + (0.5e-7 / least);
            Assert.InRange(brought[element] / wanted[element], 1 - room, 1 + room);
        }
    }

    private static double Poured(TankPlan tank, TankStepKind kind) =>
        tank.Steps.Where(step => step.Kind == kind).Sum(step => step.Volume);

    private static bool Measurable(TankStep step) =>
        step.Kind switch
        {
            TankStepKind.Read => true,
            TankStepKind.Salts => step.Weigh.Count > 0 && step.Weigh.All(salt => salt.Weighed > 0),
            _ => step.Volume >= TankCorrection.LeastDose,
        };
}
