using CsCheck;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

public sealed class StrengthTests
{
    [Fact]
    public void A_squeezed_ring_agrees_with_a_finite_element_ring()
    {
        // Ring 12.7/16.7 mm, 0.2 mm of interference, E 2000 MPa, ν 0.38; the bore's displacement under this pressure was
        // confirmed to 0.005 % with axisymmetric elements of CalculiX 2.20.
        (var pressure, var hoop) = SocketStrength.Squeeze(0.0002, 0.0127, 0.0167, 2e9, 0.38);

        Assert.Equal(3.8195e6, pressure, 50.0);
        Assert.Equal(14.297e6, hoop, 500.0);
    }

    [Fact]
    public void Twenty_newton_metres_press_a_25_mm_tube_with_3_MPa_on_a_40_mm_socket() =>
        // 6 · 20 / (0.0254 · 0.04²), by hand.
        Assert.Equal(2.953e6, SocketStrength.Bearing(20, 0.0254, 0.040), 500.0);

    [Fact]
    public void More_load_never_gives_a_thinner_wall_and_every_wall_carries_its_load() =>
        Gen.Double[0, 20]
            .Select(Gen.Double[0, 20])
            .Holds(
                (a, b) =>
                {
                    PrintDesign Foot(double moment) =>
                        PrintDesigner.For(PrintedKind.Foot, new() { Load = new(moment, 300) });
                    (var light, var heavy) = (Foot(Math.Min(a, b)), Foot(Math.Max(a, b)));
                    Assert.True(light.Wall <= heavy.Wall);
                    Assert.True(heavy.Strength!.UprightMoment >= Math.Max(a, b));
                },
                iter: 100
            );

    [Fact]
    public void Warmth_only_weakens()
    {
        foreach (var plastic in Plastic.All)
        {
            double[] shares =
            [
                .. Enumerable.Range(270, 110).Select(kelvin => SocketStrength.HeatShare(plastic, kelvin)),
            ];

            Assert.Equal(shares.OrderDescending(), shares);
            Assert.Equal(1, shares[0]);
            Assert.Equal(0, SocketStrength.HeatShare(plastic, plastic.CreepTemperature));
        }
    }

    [Fact]
    public void A_loaded_part_names_the_temperature_at_which_it_creeps()
    {
        var cautions = PrintDesigner.For(PrintedKind.Tee, new()).Cautions;

        Assert.Contains(cautions, text => text.Told().Contains("65 °C", StringComparison.Ordinal));
        Assert.Contains(
            PrintDesigner.For(PrintedKind.Tee, new() { Load = new(1, 327) }).Cautions,
            text => text.Told().Contains("creep", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_slide_fit_holds_no_pull_and_a_squeeze_holds_some()
    {
        Assert.Equal(0, PrintDesigner.For(PrintedKind.Tee, new()).Strength!.PullOut);
        Assert.True(PrintDesigner.For(PrintedKind.Tee, new() { Clearance = -0.0001 }).Strength!.PullOut > 0);
    }

    [Fact]
    public void A_cube_of_10_mm_of_PETG_weighs_1_27_g_and_takes_416_mm_of_filament()
    {
        // 1 cm³ · 1.27 g/cm³; 1000 mm³ / (π/4 · 1.75² mm²) = 415.75 mm.
        var estimate = PrintEstimate.Of(1e-6, Plastic.Petg, new());

        Assert.Equal(1.27e-3, estimate.Mass, 1e-9);
        Assert.Equal(0.41575, estimate.FilamentLength, 1e-5);
    }
}
