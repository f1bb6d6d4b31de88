using Dripwright.Engine.Fittings;
using Dripwright.Solids.Pictures;

namespace Dripwright.Solids.Tests;

public sealed class PictureTests
{
    public static TheoryData<PrintedKind> Kinds => [.. Enum.GetValues<PrintedKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_fitting_has_a_picture_of_moderate_size(PrintedKind kind)
    {
        var fitting = FittingShop.For(kind, new() { Number = "A12" });
        var mesh = Meshes.Of(fitting);

        var svg = FittingPicture.Of(mesh).ToSvg("A12");

        if (Environment.GetEnvironmentVariable("FITTING_PICTURES") is { } folder)
        {
            File.WriteAllText(Path.Combine(folder, $"{kind}.svg"), svg);
            File.WriteAllText(
                Path.Combine(folder, $"{kind}-use.svg"),
                FittingPicture.InUse(fitting, mesh).ToSvg("A12")
            );
        }

        Assert.InRange(svg.Length, 1_000, 200_000);
    }
}
