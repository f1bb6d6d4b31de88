using CsCheck;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine.Tests.Stands;

public sealed class CropWirePlanTests
{
    private const string Wired =
        """{ "rows": [ { "pots": 10 } ], "cropWire": { "wire": "rope-1/8in", "strings": 2, "supports": "4 ft" } }""";

    [Fact]
    public void A_rig_without_a_wire_hangs_nothing_and_buys_nothing_for_it()
    {
        var plan = Plans.From("""{ "rows": [ { "pots": 10 } ] }""");
        Assert.Empty(plan.CropWire.Wires);
        Assert.Null(plan.CropWire.Plant);
        Assert.DoesNotContain(plan.Parts.Lines, l => l.Part.StartsWith("vine-", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_planted_pot_hangs_its_plants_over_itself_and_the_wire_carries_them_all() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                if (rig.CropWire.Wire == "none")
                {
                    Assert.Empty(plan.CropWire.Wires);
                    return;
                }

                foreach (var row in plan.Layout.Rows)
                {
                    LoadedWire[] over = [.. plan.CropWire.Wires.Where(w => w.Place.Row == row.Number)];
                    var hung = over.SelectMany(w => w.Place.Hanging).OrderBy(h => h.Pot).ToArray();
                    // Salad stands by itself.
                    PotPlace[] trained = [.. row.Pots.Where(p => p.Planted && p.Crop != "salad")];
                    Assert.Equal(trained.Select(p => p.Number), hung.Select(h => h.Pot));
                    Assert.Equal(trained.Sum(p => p.Plants), hung.Sum(h => h.Plants));
                    foreach (var wire in over)
                    {
                        var own =
                            wire.Loaded.Spans.Sum(s => s.SlackLength) * plan.Layout.Parts.Wire!.MassOfMetre * 9.80665;
                        var carried = wire.Loaded.Supports.Sum(s => s.Down);
                        Assert.Equal(wire.Weight + own, carried, 1e-6 * (1 + carried));
                        Assert.All(
                            wire.Place.Supports.Zip(wire.Place.Supports.Skip(1)),
                            pair => Assert.True(pair.Second - pair.First <= rig.CropWire.Supports + 1e-9)
                        );
                    }
                }
            },
            iter: 50
        );

    [Fact]
    public void Parts_are_counted_again_by_hand()
    {
        var plan = Plans.From(Wired);
        int Need(string key) => plan.Parts.Lines.Single(l => l.Part == key).Needed;
        // Ten pots a foot apart stand on two modules of five feet: 10 ft of wire, spans of at most 4 ft: three, four supports.
        Assert.Equal(
            [0, 10 / 3.0, 20 / 3.0, 10],
            Assert.Single(plan.Layout.Wires).Supports.Select(s => s / 0.3048),
            s_near
        );
        Assert.Equal(2, Need("wire-hook"));
        Assert.Equal(2, Need("wire-eye-bolt"));
        Assert.Equal(4, Need("wire-clip"));
        Assert.Equal(1, Need("wire-turnbuckle"));
        Assert.Equal(20, Need("vine-hook"));
        Assert.Equal(1, Need("rope-1/8in"));
        // 7 ft and 6 m of string each, from rolls of 2000 ft: 74 to a roll.
        Assert.Equal(1, Need("vine-string"));
    }

    [Fact]
    public void A_staggered_row_has_a_wire_over_each_of_its_lines()
    {
        var plan = Plans.From(
            """{ "rows": [ { "pots": 8, "arrangement": "staggered" } ], "cropWire": { "wire": "rope-3mm" } }"""
        );
        Assert.Equal(["W1-front", "W1-back"], plan.CropWire.Wires.Select(w => w.Place.Label));
        Assert.All(plan.CropWire.Wires, w => Assert.Equal(4, w.Place.Hanging.Count));
    }

    [Fact]
    public void Two_plants_in_a_pot_hang_with_twice_the_weight()
    {
        double Weight(string plants) =>
            Plans
                .From(
                    $$"""{ "rows": [ { "pots": 4, "planting": [ { "crop": "tomato", "plants": {{plants}} } ] } ], "cropWire": { "wire": "rope-1/8in", "plantMass": "40 lb" } }"""
                )
                .CropWire.Wires[0]
                .Weight;
        Assert.Equal(2 * Weight("1"), Weight("2"), 1e-9);
    }

    private static readonly IEqualityComparer<double> s_near = EqualityComparer<double>.Create(
        (a, b) => Math.Abs(a - b) < 1e-9,
        _ => 0
    );
}
