using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

/// <summary>The drain hanger holds its pipe where the layout says, sound and strong enough.</summary>
public sealed class HangerTests
{
    public static TheoryData<HangerMount, TubeShape> MountsAndShapes =>
        new(
            from mount in Enum.GetValues<HangerMount>()
            from shape in new[] { TubeShape.Round, TubeShape.Square }
            select new TheoryDataRow<HangerMount, TubeShape>(mount, shape)
        );

    [Theory]
    [MemberData(nameof(MountsAndShapes))]
    public void A_hanger_of_each_mount_is_sound_and_as_large_as_its_outline_less_groove_and_slots(
        HangerMount mount,
        TubeShape shape
    )
    {
        foreach (var low in new[] { 0, 0.02, 0.06 })
        {
            var mesh = Meshes.Of(Hanger(mount, shape, 0.075, low));
            var check = MeshCheck.Of(mesh);
            Assert.True(check.Sound, check.ToString());
            var formula = Hanger(mount, shape, 0.075, low).Volume!.Value * 1e9;
            Assert.InRange(mesh.CubicMillimetres / formula, 1 - 1e-5, 1 + 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(MountsAndShapes))]
    public void As_used_the_pipe_lies_as_far_from_the_tube_as_asked_and_below_it_under_a_tube(
        HangerMount mount,
        TubeShape shape
    )
    {
        const double reach = 0.080;
        const double low = 0.030;
        var fitting = Hanger(mount, shape, reach, low);
        var mesh = Meshes.Of(fitting);
        // In the room, the tube's axis at the foot's middle being the origin.
        Vector3 pipe = mount == HangerMount.Leg ? new(0, -reach, low) : new(0, 0, -reach);
        var radius = (fitting.Parameters.PipeOutside / 2) + fitting.Parameters.Clearance;
        var nearest = double.PositiveInfinity;
        foreach (var point in mesh.Points)
        {
            var at = fitting.InUse.Of(new(point.X / 1000, point.Y / 1000, point.Z / 1000));
            var away = Math.Sqrt(Math.Pow(at.Y - pipe.Y, 2) + Math.Pow(at.Z - pipe.Z, 2));
            nearest = Math.Min(nearest, away);
        }

        // Corners of the bore lie a little outside the circle that its facets touch.
        Assert.InRange(nearest, radius - 2e-6, radius * 1.002);
    }

    [Fact]
    public void A_ring_half_way_round_bends_as_the_formula_by_hand()
    {
        // 48.26 mm pipe with 0.2 mm gap, ring of 3.2 x 40 mm, 20 N: r = 25.93 mm.
        // 6 · 20 · 25.93 / (40 · 3.2²) + 20 / (40 · 3.2) = 7.597 + 0.156 = 7.753 MPa.
        var made = new PrintParameters { HangerLoad = 20, Load = new(0, 295) };
        var strength = HangerStrength.Of(made, 0.02433, 0.0032, 0.040);

        // PETG at room temperature: 44 MPa, half of it for years, safety 2.
        Assert.Equal(11e6, strength.Allowed, 1);
        Assert.Equal(20 * 11 / 7.753, strength.Carries, 0.02);
    }

    [Fact]
    public void More_weight_and_more_warmth_never_make_a_thinner_ring_and_every_ring_carries_its_weight() =>
        Gen.Select(Gen.Double[0, 25], Gen.Double[0, 20], Gen.Double[290, 318], Gen.Double[0, 12])
            .Holds(
                (load, more, temperature, warmer) =>
                {
                    PrintDesign Of(double weight, double kelvin) =>
                        PrintDesigner.For(
                            PrintedKind.DrainHanger,
                            new()
                            {
                                HangerLoad = weight,
                                Load = new(0, kelvin),
                                Plastic = Plastic.Asa,
                            }
                        );
                    var light = Of(load, temperature);
                    Assert.True(light.Hanger!.Carries >= load);
                    Assert.True(Of(load + more, temperature).Wall >= light.Wall);
                    Assert.True(Of(load, temperature + warmer).Wall >= light.Wall);
                },
                iter: 200
            );

    [Fact]
    public void A_hanger_names_the_temperature_at_which_it_creeps_and_what_holds_it()
    {
        var leg = Hanger(HangerMount.Leg, TubeShape.Round, 0.06, 0);

        Assert.Contains(leg.Cautions, c => c.Told().Contains("sags under load from 65 °C", StringComparison.Ordinal));
        Assert.Contains(leg.Cautions, c => c.Told().Contains("screw", StringComparison.Ordinal));
        Assert.Contains(
            Hanger(HangerMount.Cross, TubeShape.Round, 0.06, 0).Cautions,
            c => c.Told().Contains("two cable ties", StringComparison.Ordinal)
        );
    }

    private static PrintDesign Hanger(HangerMount mount, TubeShape shape, double reach, double low) =>
        PrintDesigner.For(
            PrintedKind.DrainHanger,
            new()
            {
                Number = "P12",
                TubeShape = shape,
                PipeOutside = 0.04826,
                HangerMount = mount,
                HangerReach = reach,
                HangerLow = low,
            }
        );
}
