using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

/// <summary>Volumes written out by hand for a few plain parts, apart from the descriptions they are made from.</summary>
public sealed class FormulaTests
{
    [Fact]
    public void A_square_coupler_is_a_bevelled_bar_less_two_bores_a_throat_and_its_slopes()
    {
        // 25 mm tube, 0.2 mm gap, 25.4 mm bore, 37.5 mm deep; walls of 6 lines: 2.4 mm.
        var fitting = PrintDesigner.For(
            PrintedKind.Coupler,
            new()
            {
                TubeShape = TubeShape.Square,
                TubeOutside = 0.025,
                Load = new(0, 295),
            }
        );
        var wall = fitting.Wall * 1000;
        var outer = 25.4 + (2 * wall);
        var rim = Math.Min(0.15 * 12.7, 2.5);
        var length = (2 * 37.5) + rim + wall;
        var throat = 25.4 - (2 * rim);
        static double Frustum(double a, double b, double h) => h / 3 * ((a * a) + (a * b) + (b * b));

        var solid = ((outer * outer) - (2 * (wall / 2) * (wall / 2))) * length;
        var bores = (2 * (37.5 - 0.8) * 25.4 * 25.4) + (2 * Frustum(25.4, 27.0, 0.8));
        var middle = Frustum(25.4, throat, rim) + (throat * throat * wall);

        var volume = Meshes.Of(fitting).CubicMillimetres;
        Assert.InRange(volume / (solid - bores - middle), 1 - 1e-5, 1 + 1e-5);
    }

    [Fact]
    public void A_clamp_block_is_a_box_less_a_circle_segment_and_two_holes()
    {
        // Hose 20 mm: channel 9.375 mm deep; polygons of 96 and 32 sides around the circles make the cuts a little larger.
        var mesh = Meshes.Of(PrintDesigner.For(PrintedKind.ClampBlock, new() { HoseOutside = 0.020 }));
        double along = mesh.High.X - mesh.Low.X;
        double wide = mesh.High.Y - mesh.Low.Y;
        double high = mesh.High.Z;
        var angle = 2 * Math.Acos(0.625 / 10);
        var segment = 100 / 2.0 * (angle - Math.Sin(angle));
        var holes = 2 * Math.PI * 2.25 * 2.25 * high;

        Assert.Equal(15.375, high, 1e-4);
        Assert.Equal(1, mesh.CubicMillimetres / ((along * wide * high) - (segment * along) - holes), 1e-3);
    }

    [Fact]
    public void A_flat_square_tee_is_its_hub_and_three_arms_less_three_bores()
    {
        var fitting = PrintDesigner.For(
            PrintedKind.Tee,
            new()
            {
                TubeShape = TubeShape.Square,
                TubeOutside = 0.025,
                JointCentre = 0.018,
                Load = new(0, 295),
            }
        );
        var r = 12.7 + (fitting.Wall * 1000);
        var bevel = fitting.Wall * 1000 / 2;
        var reach = 18 + 37.5;
        // Level by level: a plus-shaped plan of half-width w, w = r but for the bevels, where it falls to r - bevel.
        double Plan(double w) => (4 * w * reach) + (2 * w * (reach - w));
        double bevels = 0;
        const int steps = 20_000;
        for (var i = 0; i < steps; i++)
        {
            bevels += Plan(r - bevel + (bevel * (i + 0.5) / steps)) * bevel / steps;
        }

        var body = (Plan(r) * 2 * (r - bevel)) + (2 * bevels);
        // The roof is lifted by a layer of 0.2 mm; the flare grows both sides by 0.8 / 12.7.
        var area = 25.4 * 25.6;
        var k = 1 + (0.8 / 12.7);
        var bore = (area * (37.5 - 0.8)) + (area * 0.8 / 3 * (1 + k + (k * k)));

        var volume = Meshes.Of(fitting).CubicMillimetres;
        Assert.InRange(volume / (body - (3 * bore)), 1 - 1e-5, 1 + 1e-5);
    }
}
