using System.Globalization;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Shapes;
using Dripwright.Solids.Pictures;

namespace Dripwright.Solids.Tests;

public sealed class PictureTests
{
    public static TheoryData<PrintedKind> Kinds => [.. Enum.GetValues<PrintedKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_fitting_has_a_picture_of_moderate_size(PrintedKind kind)
    {
        var fitting = PrintDesigner.For(kind, new() { Number = "A12" });
        var mesh = Meshes.Of(fitting);

        var svg = PrintPicture.Of(mesh).ToSvg("A12");

        // To look at them: FITTING_PICTURES=folder.
        if (Environment.GetEnvironmentVariable("FITTING_PICTURES") is { Length: > 0 } folder)
        {
            var heavy = PrintDesigner.For(kind, new() { Number = "A12", Load = new(25, 300) });
            File.WriteAllText(Path.Combine(folder, $"{kind}.svg"), svg);
            File.WriteAllText(Path.Combine(folder, $"{kind}.json"), SolidText.Of(fitting.Shape));
            var print = Meshes.Estimate(fitting, mesh);
            var size = 1000 * fitting.Box.Size;
            File.WriteAllText(
                Path.Combine(folder, $"{kind}.txt"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{kind}: {size.X:0.0} x {size.Y:0.0} x {size.Z:0.0} mm, {mesh.CubicMillimetres:0.00} mm³, "
                        + $"{print.Mass * 1000:0.0} g, {print.FilamentLength:0.00} m of filament, "
                        + $"{mesh.Triangles.Count} triangles\n"
                )
            );
            File.WriteAllText(
                Path.Combine(folder, $"{kind}-heavy.svg"),
                PrintPicture.Of(Meshes.Of(heavy)).ToSvg("A12")
            );
            File.WriteAllText(Path.Combine(folder, $"{kind}-use.svg"), PrintPicture.InUse(fitting, mesh).ToSvg("A12"));
        }

        Assert.InRange(svg.Length, 1_000, 200_000);
    }

    [Fact]
    public void What_lies_behind_is_covered_by_what_lies_before()
    {
        // A small cube behind a large plate, seen from the front right: nothing of the cube is left.
        var plate = new Extrusion(Loop.Rectangle(-0.05, -0.05, 0.05, 0.05), 0.1);
        var cube = new Extrusion(Loop.Rectangle(-0.06, 0.02, -0.055, 0.025), 0.005);

        var alone = PrintPicture.Of(SolidKernel.Shared.MeshOf(plate));
        var both = PrintPicture.Of(SolidKernel.Shared.MeshOf(new Union([plate, cube])));

        Assert.Equal(3, alone.Faces.Count);
        Assert.Equal(3, both.Faces.Count);
    }

    [Fact]
    public void A_nearer_cube_is_drawn_after_a_farther_one()
    {
        var far = new Extrusion(Loop.Rectangle(0, 0, 0.01, 0.01), 0.01);
        var near = far.Shifted(0.006, -0.012, 0.003);

        var picture = PrintPicture.Of(SolidKernel.Shared.MeshOf(new Union([far, near])));

        // The right face of the far cube is half covered: it must come before the front face of the near one.
        Assert.Equal(6, picture.Faces.Count);
        // The near one lies lower and farther left on paper.
        double Place(IEnumerable<PictureFace> faces) => faces.Average(f => f.Loops[0].Average(p => p.X - p.Y));
        Assert.True(Place(picture.Faces.Take(3)) > Place(picture.Faces.Skip(3)));
    }
}
