using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Scenes;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Model;
using Dripwright.Solids;
using Dripwright.Solids.Files;
using Dripwright.Solids.Pictures;
using EnginePart = Dripwright.Engine.Printed.PrintedPart;

namespace Dripwright.Pack;

/// <summary>The build pack with its printed parts: sheets from the one project, solids from the other.</summary>
/// <remarks>The same plan, file text and options give the same bytes on every machine; words are in the language asked for.</remarks>
public static class WholePack
{
    /// <summary>The file that stands in the pack where the printed parts' own files could not be made on this machine.</summary>
    public const string NotMade = Folder + "/not-made.txt";

    /// <summary>The rig in the round, for other programs.</summary>
    public const string RoundFile = "rig.glb";

    private const string Folder = "fittings";

    /// <summary>Share of the work that the solids take.</summary>
    private const double Solid = 0.4;

    /// <summary>Every file of the pack, the printed parts in a folder of their own, and the list of all of them.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rigFileText">The rig file it was computed from; it goes into the pack unchanged.</param>
    /// <param name="options">Paper and title block.</param>
    /// <param name="progress">Told at each stage.</param>
    /// <returns>Files by their path within the pack, with forward slashes.</returns>
    public static IReadOnlyDictionary<string, byte[]> Write(
        Plan plan,
        string rigFileText,
        BuildPackOptions options,
        IProgress<PlanProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        using var language = new Speaking(options.Language);
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        if (plan.Printed.Parts.Count > 0)
        {
            try
            {
                foreach (var (name, bytes) in Fittings(plan.Printed, plan.Rig.Units, Part(progress, 0, Solid)))
                {
                    files.Add($"{Folder}/{name}", bytes);
                }
            }
            catch (SolidsMissingException)
            {
                files.Add(NotMade, Encoding.UTF8.GetBytes(Words.Of("solids.missing") + "\n"));
            }
        }

        foreach (var (name, bytes) in WithoutFittings(plan, rigFileText, options, Part(progress, Solid, 1)))
        {
            files.Add(name, bytes);
        }

        files.Add(RoundFile, SceneFile.Write(RigScene.Of(plan), plan.Rig.Name));
        files.Add(PackList.FileName, PackList.Of(files).ToBytes());
        return files;
    }

    /// <summary>The printed parts' own files; a part whose solid was computed lately is not computed again.</summary>
    /// <param name="printed">The parts.</param>
    /// <param name="units">Units in which their list tells lengths of the rig.</param>
    /// <param name="progress">Told after each.</param>
    public static IReadOnlyDictionary<string, byte[]> Fittings(
        PrintedParts printed,
        UnitSystem units,
        IProgress<PlanProgress>? progress = null
    ) => PrintFiles.Write(printed, units, progress, part => MadeParts.Of(part).Mesh);

    /// <summary>The pack without the printed parts' own files; their sheet is in it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rigFileText">The rig file it was computed from; it goes into the pack unchanged.</param>
    /// <param name="options">Paper and title block.</param>
    /// <param name="progress">Told at each stage.</param>
    public static IReadOnlyDictionary<string, byte[]> WithoutFittings(
        Plan plan,
        string rigFileText,
        BuildPackOptions options,
        IProgress<PlanProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        return BuildPack.Write(plan, rigFileText, options with { Printed = Pictures(plan.Printed) }, progress);
    }

    /// <summary>Every sheet of the pack, with the pictures of its printed parts.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="options">Paper and title block.</param>
    public static IReadOnlyList<Sheet> Sheets(Plan plan, BuildPackOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        return BuildPack.Sheets(plan, options with { Printed = Pictures(plan.Printed) });
    }

    /// <summary>How the printed parts look, and what one of each takes.</summary>
    /// <param name="printed">The parts.</param>
    public static IReadOnlyList<PrintedPicture> Pictures(PrintedParts printed)
    {
        ArgumentNullException.ThrowIfNull(printed);
        try
        {
            return [.. printed.Parts.Select(Picture)];
        }
        catch (SolidsMissingException)
        {
            // The sheet tells each part in words.
            return [];
        }
    }

    private static PrintedPicture Picture(EnginePart part)
    {
        var made = MadeParts.Of(part.Design);
        return new(
            part.Number,
            made.Picture.Width,
            made.Picture.Height,
            [
                .. made.Picture.Faces.Select(face => new PrintedFace(
                    [.. face.Loops.Select(loop => (IReadOnlyList<Point>)[.. loop.Select(At)])],
                    [.. face.Edges.Select(edge => (At(edge.From), At(edge.To)))],
                    face.Light
                )),
            ],
            Meshes.Estimate(part.Design, made.Mesh)
        );
    }

    private static Point At(PicturePoint p) => new(p.X, p.Y);

    private static Within? Part(IProgress<PlanProgress>? progress, double from, double to) =>
        progress is null ? null : new Within(progress, from, to);

    /// <summary>Progress of a part of the work, told as progress of the whole.</summary>
    private sealed class Within(IProgress<PlanProgress> whole, double from, double to) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) =>
            whole.Report(value with { Share = from + ((to - from) * value.Share) });
    }
}
