using BenchmarkDotNet.Attributes;
using Dripwright.Engine.Printed;
using Dripwright.Solids;
using Dripwright.Solids.Pictures;

namespace Dripwright.Bench;

/// <summary>How long a printed part takes: its description, its mesh, its picture.</summary>
[ShortRunJob]
[MemoryDiagnoser]
public class SolidsBench
{
    private readonly PrintParameters _parameters = new() { Number = "A12" };
    private PrintDesign? _fitting;
    private SolidMesh? _mesh;

    /// <summary>Kinds under test.</summary>
    public static IEnumerable<PrintedKind> Kinds => Enum.GetValues<PrintedKind>();

    /// <summary>Kind of part.</summary>
    [ParamsSource(nameof(Kinds))]
    public PrintedKind Kind { get; set; }

    /// <summary>Starts the kernel, which is not counted.</summary>
    [GlobalSetup]
    public void Make()
    {
        _fitting = PrintDesigner.For(Kind, _parameters);
        _mesh = Meshes.Of(_fitting);
    }

    /// <summary>The description alone.</summary>
    [Benchmark]
    public PrintDesign Description() => PrintDesigner.For(Kind, _parameters);

    /// <summary>Evaluated and checked.</summary>
    [Benchmark(Baseline = true)]
    public int Mesh() => Meshes.Of(_fitting!).Triangles.Count;

    /// <summary>Drawn, hidden faces left out.</summary>
    [Benchmark]
    public int Picture() => PrintPicture.Of(_mesh!).Faces.Count;
}
