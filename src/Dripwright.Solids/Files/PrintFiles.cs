using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Solids.Files;

/// <summary>The files from which a rig's printed parts are printed.</summary>
/// <remarks>The same parts give the same bytes on every machine; the list of them is in the reader's language.</remarks>
public static class PrintFiles
{
    /// <summary>For each part one 3MF, one STL and one picture, and a list of all.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="units">Units in which the list tells lengths of the rig; what the printer does is in millimetres and grams.</param>
    /// <param name="progress">Told before each part.</param>
    /// <param name="meshOf">Where meshes come from; computed here where null.</param>
    /// <returns>Bytes by file name.</returns>
    public static IReadOnlyDictionary<string, byte[]> Write(
        PrintedParts parts,
        UnitSystem units,
        IProgress<PlanProgress>? progress = null,
        Func<PrintDesign, SolidMesh>? meshOf = null
    )
    {
        ArgumentNullException.ThrowIfNull(parts);
        meshOf ??= Meshes.Of;
        var told = new PlanWords(units);
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        var list = new StringBuilder(
            "number,count,part,where,grams each,filament metres each,fits the bed,how to lay it,cautions\r\n"
        );
        var done = 0;
        foreach (var part in parts.Parts)
        {
            progress?.Report(new PlanProgress(Phrase.Of("progress.printed"), (double)done++ / parts.Parts.Count));
            var mesh = meshOf(part.Design);
            var print = Meshes.Estimate(part.Design, mesh);
            var name = part.Number;
            files[$"{name}.3mf"] = Bytes(target => ThreeMfFile.Write([new(name, mesh)], name, target));
            files[$"{name}.stl"] = Bytes(target => StlFile.Write(mesh, target));
            files[$"{name}.svg"] = Encoding.UTF8.GetBytes(
                Pictures
                    .PrintPicture.InUse(part.Design, mesh)
                    .ToSvg($"{name}, {Words.Of($"printed.{part.Design.Kind}")}")
            );
            string[] cells =
            [
                name,
                Number.Of(part.Count * part.Design.Pieces),
                Words.Of($"printed.{part.Design.Kind}"),
                told.Of(part.Use),
                Number.Of(1000 * print.Mass, 0),
                Number.Of(print.FilamentLength, 1),
                part.Design.Bed.Fits ? "yes" : "no",
                told.Of(part.Design.Orientation),
                string.Join(" ", part.Design.Cautions.Select(told.Of)),
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
