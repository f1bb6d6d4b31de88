using System.Globalization;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Solids.Tests;

/// <summary>A description written for OpenSCAD, whose exact kernel is another one than ours.</summary>
internal static class ScadText
{
    public static string Of(Solid solid) =>
        solid switch
        {
            Extrusion e => $"linear_extrude(height={Mm(e.Height)}) {Polygon(e.Loops)}",
            Taper t => $"linear_extrude(height={Mm(t.Height)},scale={Real(t.TopScale)}) {Polygon([t.Base])}",
            Lathe l => $"rotate([0,0,{Real(180.0 / l.Sides)}]) rotate_extrude($fn={Real(l.Sides)}) "
                + Polygon([new([.. l.Outline.Corners.Select(c => c with { X = c.X * l.CornerScale })])]),
            Hull h => $"hull(){{{All(h.Parts)}}}",
            Moved m => $"multmatrix({Matrix(m.Where)}){{{Of(m.Part)}}}",
            Union u => $"union(){{{All(u.Parts)}}}",
            Difference d => $"difference(){{{Of(d.From)}{All(d.Cuts)}}}",
            _ => throw new ArgumentOutOfRangeException(nameof(solid)),
        };

    private static string All(IReadOnlyList<Solid> parts) => string.Concat(parts.Select(Of));

    private static string Polygon(IReadOnlyList<Loop> loops)
    {
        var first = 0;
        List<string> paths = [];
        foreach (var loop in loops)
        {
            paths.Add($"[{string.Join(',', Enumerable.Range(first, loop.Corners.Count).Select(i => Real(i)))}]");
            first += loop.Corners.Count;
        }

        var points = string.Join(',', loops.SelectMany(l => l.Corners).Select(c => $"[{Mm(c.X)},{Mm(c.Y)}]"));
        return $"polygon(points=[{points}],paths=[{string.Join(',', paths)}]);";
    }

    private static string Matrix(Placement p) =>
        $"[[{Real(p.X.X)},{Real(p.Y.X)},{Real(p.Z.X)},{Mm(p.Origin.X)}],"
        + $"[{Real(p.X.Y)},{Real(p.Y.Y)},{Real(p.Z.Y)},{Mm(p.Origin.Y)}],"
        + $"[{Real(p.X.Z)},{Real(p.Y.Z)},{Real(p.Z.Z)},{Mm(p.Origin.Z)}],[0,0,0,1]]";

    private static string Mm(double metres) => Real(1000 * metres);

    private static string Real(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
