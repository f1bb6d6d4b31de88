using CsCheck;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

public sealed class BedFitTests
{
    [Fact]
    public void The_formula_for_slanted_parts_agrees_with_turning_in_small_steps() =>
        Gen.Select(Gen.Double[0.02, 0.4], Gen.Double[0.005, 0.3], Gen.Double[0.1, 0.4], Gen.Double[0.1, 0.4])
            .Holds(
                (x, y, width, depth) =>
                {
                    var formula = BedFit.Of(new(x, y, 0.1), new() { BedWidth = width, BedDepth = depth }).Fits;
                    var room = Enumerable
                        .Range(0, 1801)
                        .Select(i => i * Math.PI / 3600)
                        .Max(turn =>
                            Math.Min(
                                width - 0.010 - ((x * Math.Cos(turn)) + (y * Math.Sin(turn))),
                                depth - 0.010 - ((x * Math.Sin(turn)) + (y * Math.Cos(turn)))
                            )
                        );
                    // Steps miss the very best angle by a hair.
                    Assert.True(formula ? room > -0.0003 : room < 0.0003);
                },
                iter: 2000
            );

    [Fact]
    public void A_part_taller_than_the_printer_does_not_fit() =>
        Assert.False(BedFit.Of(new(0.1, 0.1, 0.3), new() { Height = 0.25 }).Fits);

    [Fact]
    public void A_guide_longer_than_the_bed_comes_as_two_blocks_on_a_spare_tube()
    {
        var bar = PrintDesigner.For(PrintedKind.DrillGuide, new() { HolePitch = 0.15 });
        var blocks = PrintDesigner.For(PrintedKind.DrillGuide, new() { HolePitch = 0.3048 });

        Assert.Equal((1, 2), (bar.Pieces, blocks.Pieces));
        Assert.True(blocks.Bed.Fits);
        // Holes 12 mm from the ends, floors at 26.4 mm: the tube is shorter than the pitch by 2 · 14.4 mm.
        Assert.Contains(blocks.Cautions, text => text.Told().Contains("276 mm", StringComparison.Ordinal));
    }
}
