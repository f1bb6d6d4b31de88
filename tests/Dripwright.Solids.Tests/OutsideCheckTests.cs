using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Solids.Files;

namespace Dripwright.Solids.Tests;

/// <summary>The files judged by programs of others: a mesh checker, a slicer and another kernel.</summary>
public sealed partial class OutsideCheckTests : IDisposable
{
    /// <summary>Kinds without a formula for their volume, with the moment that makes their walls.</summary>
    private static readonly (PrintedKind Kind, double Moment)[] s_withoutFormula =
    [
        (PrintedKind.Joint, 5),
        (PrintedKind.ThreeWay, 5),
        (PrintedKind.HoseClip, 5),
        (PrintedKind.FourWay, 5),
        (PrintedKind.ThreeWay, 25),
    ];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fittings");

    public static TheoryData<PrintedKind> Kinds => [.. PrintGen.Kinds];

    /// <summary>Slicing takes seconds a part.</summary>
    public static TheoryData<PrintedKind> Sliced => [.. Trials.Of(5, PrintGen.Kinds)];

    /// <summary>Some of <see cref="s_withoutFormula"/>; the other kernel takes seconds a part.</summary>
    public static TheoryData<PrintedKind, double> WithoutFormula => [.. Trials.Of(2, s_withoutFormula)];

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_mesh_checker_finds_nothing_to_mend(PrintedKind kind)
    {
        // Only a hanger differs by what it is tied to.
        HangerMount[] mounts =
            kind == PrintedKind.DrainHanger
                ? [HangerMount.Leg, HangerMount.Cross, HangerMount.Rail]
                : [HangerMount.Leg];
        foreach (
            var (shape, mount) in from shape in new[] { TubeShape.Round, TubeShape.Square }
            from mount in mounts
            select (shape, mount)
        )
        {
            var mesh = Meshes.Of(
                PrintDesigner.For(
                    kind,
                    new()
                    {
                        TubeShape = shape,
                        HangerMount = mount,
                        HangerReach = 0.09,
                        HangerLow = 0.02,
                        Number = "A12",
                        Load = new(20, 300),
                    }
                )
            );
            var path = Path.Combine(_folder.FullName, "part.stl");
            using (var file = File.Create(path))
            {
                StlFile.Write(mesh, file);
            }

            var report = OutsideTool.Run("admesh", path);

            Assert.Equal(mesh.Triangles.Count, Count(report, "Number of facets"));
            string[] faults =
            [
                "Facets with 1 disconnected edge",
                "Facets with 2 disconnected edges",
                "Facets with 3 disconnected edges",
                "Total disconnected facets",
                "Degenerate facets",
                "Edges fixed",
                "Facets removed",
                "Facets added",
                "Facets reversed",
                "Backwards edges",
                "Normals fixed",
            ];
            Assert.All(faults, fault => Assert.Equal(0, Count(report, fault)));
            Assert.Equal(1, Count(report, "Number of parts"));
            Assert.DoesNotContain("Reversing all", report, StringComparison.Ordinal);
            Assert.InRange(Real(report, @"Volume\s*:") / mesh.CubicMillimetres, 1 - 1e-5, 1 + 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Sliced))]
    public void A_slicer_reads_the_3mf_as_one_closed_part_of_its_size_and_slices_it_without_repair(PrintedKind kind)
    {
        var fitting = PrintDesigner.For(kind, new() { Number = "A12" });
        var mesh = Meshes.Of(fitting);
        var path = Path.Combine(_folder.FullName, "part.3mf");
        using (var file = File.Create(path))
        {
            ThreeMfFile.Write([new("A12", mesh)], "A12", file);
        }

        var info = OutsideTool.Run("prusa-slicer", "--info", path);

        Assert.Contains("manifold = yes", info, StringComparison.Ordinal);
        Assert.DoesNotContain("open_edges", info, StringComparison.Ordinal);
        Assert.DoesNotContain("facets_reversed", info, StringComparison.Ordinal);
        Assert.Equal(1, Real(info, "number_of_parts ="));
        Assert.Equal(mesh.High.X - mesh.Low.X, Real(info, "size_x ="), 0.001);
        Assert.InRange(Real(info, @"^volume =") / mesh.CubicMillimetres, 1 - 1e-5, 1 + 1e-5);

        var code = Path.Combine(_folder.FullName, "part.gcode");
        var said = OutsideTool.Run(
            "prusa-slicer",
            "--export-gcode",
            "--nozzle-diameter=0.4",
            "--layer-height=0.2",
            "--first-layer-height=0.2",
            "--filament-diameter=1.75",
            "--filament-density=1.27",
            "--fill-density=100%",
            "--fill-pattern=rectilinear",
            "--skirts=0",
            "--bed-shape=0x0,220x0,220x220,0x220",
            $"--output={code}",
            path
        );

        Assert.DoesNotMatch(RepairWords(), said);
        Assert.True(File.Exists(code), said);
        // Lines are laid a little closer or wider than the shape; a slicer's own figure is the best outside estimate.
        var used = Real(File.ReadAllText(code), @"filament used \[g\] =");
        Assert.InRange(Meshes.Estimate(fitting, mesh).Mass * 1000 / used, 0.9, 1.1);
    }

    [Theory]
    [MemberData(nameof(WithoutFormula))]
    public void Another_kernel_finds_the_same_volume(PrintedKind kind, double moment)
    {
        var fitting = PrintDesigner.For(kind, new() { Number = "A12", Load = new(moment, 300) });
        Assert.Null(fitting.Volume);
        var script = Path.Combine(_folder.FullName, "part.scad");
        var stl = Path.Combine(_folder.FullName, "part.stl");
        File.WriteAllText(script, ScadText.Of(fitting.Shape));

        var said = OutsideTool.Run("openscad", "--export-format=binstl", "-o", stl, script);

        Assert.True(File.Exists(stl), said);
        using var file = File.OpenRead(stl);
        Assert.InRange(StlFile.Read(file).CubicMillimetres / Meshes.Of(fitting).CubicMillimetres, 1 - 1e-5, 1 + 1e-5);
    }

    [Fact]
    public void Every_kind_without_a_formula_is_measured_by_another_kernel()
    {
        var without = PrintGen.Kinds.Where(kind => PrintDesigner.For(kind, new() { Number = "A12" }).Volume is null);

        Assert.Empty(without.Except(s_withoutFormula.Select(measured => measured.Kind)));
    }

    private static int Count(string report, string what) => (int)Real(report, Regex.Escape(what) + @"\s*:");

    private static double Real(string report, string what)
    {
        var match = Regex.Match(report, what + @"\s*(-?[0-9.]+)", RegexOptions.Multiline, TimeSpan.FromSeconds(5));
        Assert.True(match.Success, $"{what} is not in:\n{report[..Math.Min(report.Length, 3000)]}");
        return double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex("repair|open edge|not manifold|non-manifold|error", RegexOptions.IgnoreCase, 5000)]
    private static partial Regex RepairWords();
}
