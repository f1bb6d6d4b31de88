using System.IO.Compression;
using Dripwright.Engine.Printed;
using Dripwright.Solids.Files;

namespace Dripwright.Solids.Tests;

public sealed class FileTests
{
    private static readonly SolidMesh s_mesh = Meshes.Of(
        PrintDesigner.For(PrintedKind.ThreeWay, new() { Number = "W1" })
    );

    [Fact]
    public void A_3mf_file_reads_back_as_it_was_written()
    {
        using var file = new MemoryStream();
        ThreeMfFile.Write([new("W1", s_mesh)], "Three-way W1", file);

        var part = Assert.Single(ThreeMfFile.Read(file));

        Assert.Equal("W1", part.Name);
        Assert.Equal(s_mesh.Points, part.Mesh.Points);
        Assert.Equal(s_mesh.Triangles, part.Mesh.Triangles);
    }

    [Fact]
    public void The_same_parts_give_the_same_bytes()
    {
        byte[] Write()
        {
            using var file = new MemoryStream();
            ThreeMfFile.Write([new("W1", s_mesh), new("W2", s_mesh)], "Two", file);
            return file.ToArray();
        }

        Assert.Equal(Write(), Write());
    }

    [Fact]
    public void A_3mf_file_has_three_parts_states_millimetres_and_names_nobody()
    {
        using var file = new MemoryStream();
        ThreeMfFile.Write([new("W1", s_mesh)], "Three-way W1", file);
        using var zip = new ZipArchive(file);

        Assert.Equal(["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"], zip.Entries.Select(e => e.FullName));
        using var reader = new StreamReader(zip.GetEntry("3D/3dmodel.model")!.Open());
        var model = reader.ReadToEnd();
        Assert.Contains("unit=\"millimeter\"", model, StringComparison.Ordinal);
        Assert.Contains("<metadata name=\"Title\">Three-way W1</metadata>", model, StringComparison.Ordinal);
        Assert.DoesNotContain("Designer", model, StringComparison.Ordinal);
    }

    [Fact]
    public void An_stl_file_is_as_long_as_its_triangles_ask_and_reads_back()
    {
        using var file = new MemoryStream();
        StlFile.Write(s_mesh, file);
        Assert.Equal(84 + (50L * s_mesh.Triangles.Count), file.Length);
        Assert.NotEqual("solid"u8.ToArray(), file.ToArray()[..5]);

        file.Position = 0;
        var back = StlFile.Read(file);

        Assert.True(MeshCheck.Of(back).Sound);
        Assert.Equal(s_mesh.Points.Count, back.Points.Count);
        Assert.Equal(s_mesh.CubicMillimetres, back.CubicMillimetres, 1e-6);
    }

    [Fact]
    public void A_file_that_breaks_off_is_refused()
    {
        using var file = new MemoryStream();
        StlFile.Write(s_mesh, file);
        using var half = new MemoryStream(file.ToArray()[..1000]);

        Assert.Throws<InvalidDataException>(() => StlFile.Read(half));
    }
}
