using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Printed.Shapes;
using Dripwright.Solids;

namespace Dripwright.Pack.Tests;

/// <summary>A solid that was kept is never handed out for another one: a grower would print the wrong part.</summary>
public sealed class MadePartsTests
{
    private static readonly PrintParameters s_measures = new() { HangerReach = 0.09, HangerLow = 0.01 };

    /// <summary>Every measure of a hanger, each changed by as little as a bench could notice.</summary>
    public static TheoryData<string, PrintParameters> Others =>
        new()
        {
            { "number", s_measures with { Number = "P12" } },
            { "mount", s_measures with { HangerMount = HangerMount.Rail } },
            { "reach", s_measures with { HangerReach = 0.0905 } },
            { "low", s_measures with { HangerLow = 0.0105 } },
            { "load", s_measures with { HangerLoad = 90 } },
            { "tube", s_measures with { TubeOutside = 0.026 } },
            { "pipe", s_measures with { PipeOutside = 0.061 } },
            { "clearance", s_measures with { Clearance = 0.0004 } },
        };

    [Theory]
    [MemberData(nameof(Others))]
    public void A_part_that_differs_in_one_measure_is_made_anew(string measure, PrintParameters other)
    {
        var first = MadeParts.Of(PrintDesigner.For(PrintedKind.DrainHanger, s_measures));

        var changed = PrintDesigner.For(PrintedKind.DrainHanger, other);

        Assert.NotSame(first.Mesh, MadeParts.Of(changed).Mesh);
        Assert.True(Meshes.Of(changed).Points.SequenceEqual(MadeParts.Of(changed).Mesh.Points), measure);
    }

    [Fact]
    public void The_same_part_is_made_once()
    {
        var one = MadeParts.Of(PrintDesigner.For(PrintedKind.DrainHanger, s_measures));
        var two = MadeParts.Of(PrintDesigner.For(PrintedKind.DrainHanger, s_measures with { }));

        Assert.Same(one.Mesh, two.Mesh);
    }

    [Fact]
    public void One_shape_used_in_two_ways_has_two_pictures()
    {
        var hanger = PrintDesigner.For(PrintedKind.DrainHanger, s_measures);
        var turned = hanger with
        {
            InUse = Placement.None.After(hanger.InUse) with { X = new(0, 0, 1), Z = new(-1, 0, 0) },
        };

        Assert.NotSame(MadeParts.Of(hanger).Picture, MadeParts.Of(turned).Picture);
    }
}
