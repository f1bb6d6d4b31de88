using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Files;

/// <summary>The files from which a rig's printed parts are printed.</summary>
/// <remarks>The same parts give the same bytes on every machine and in every culture.</remarks>
public static class PrintFiles
{
    /// <summary>For each part one 3MF, one STL and one picture, and a list of all.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="progress">Told before each part.</param>
    /// <param name="meshOf">Where meshes come from; computed here where null.</param>
    /// <returns>Bytes by file name.</returns>
    public static IReadOnlyDictionary<string, byte[]> Write(
        PrintedParts parts,
        IProgress<PlanProgress>? progress = null,
        Func<PrintDesign, SolidMesh>? meshOf = null
    )
    {
        ArgumentNullException.ThrowIfNull(parts);
        meshOf ??= Meshes.Of;
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        var list = new StringBuilder(
            "number,count,part,where,grams each,filament metres each,fits the bed,how to lay it,cautions\r\n"
        );
        int done = 0;
        foreach (PrintedPart part in parts.Parts)
        {
            progress?.Report(new PlanProgress("making printed parts", (double)done++ / parts.Parts.Count));
            SolidMesh mesh = meshOf(part.Design);
            PrintEstimate print = Meshes.Estimate(part.Design, mesh);
            string name = part.Number;
            files[$"{name}.3mf"] = Bytes(target => ThreeMfFile.Write([new(name, mesh)], name, target));
            files[$"{name}.stl"] = Bytes(target => StlFile.Write(mesh, target));
            files[$"{name}.svg"] = Encoding.UTF8.GetBytes(
                Pictures.PrintPicture.InUse(part.Design, mesh).ToSvg($"{name}, {part.Design.Kind}")
            );
            string[] cells =
            [
                name,
                Number.Of(part.Count * part.Design.Pieces),
                part.Design.Kind.ToString(),
                part.Use,
                Number.Of(1000 * print.Mass, 0),
                Number.Of(print.FilamentLength, 1),
                part.Design.Bed.Fits ? "yes" : "no",
                part.Design.Orientation,
                string.Join(" ", part.Design.Cautions),
            ];
            list.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");
        }

        files["printed-parts.csv"] = Encoding.UTF8.GetBytes(list.ToString());
        return files;
    }

    private static string Quoted(string cell) => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static byte[] Bytes(Action<Stream> write)
    {
        using var bytes = new MemoryStream();
        write(bytes);
        return bytes.ToArray();
    }
}
