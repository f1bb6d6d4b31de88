using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Nutrients;
using Dripwright.Sheets.Views;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets;

/// <summary>How a build pack is printed and what its title blocks say.</summary>
public sealed record BuildPackOptions
{
    /// <summary>Size of the sheets; each turns it as it needs.</summary>
    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>Whose garden; the place in the rig file where null.</summary>
    public string? Garden { get; init; }

    /// <summary>Revision as the title block says it.</summary>
    public string Revision { get; init; } = "";

    /// <summary>Date in the title block; none where null: there is no clock here.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>
    /// Language of the pack's words; that of <see cref="CultureInfo.CurrentUICulture"/> where null. Headings of lists, field names
    /// of plan.json and names of files are for other programs and do not change, nor does how numbers are written.
    /// </summary>
    public CultureInfo? Language { get; init; }

    /// <summary>Pictures and masses of the printed parts; without them the sheet of printed parts has words only.</summary>
    public IReadOnlyList<PrintedPicture> Printed { get; init; } = [];
}

/// <summary>The set of files that goes to the bench.</summary>
/// <remarks>
/// The same plan, file text, options and language give the same bytes on every machine and in every culture. Handbook page:
/// docs/handbook/build-pack.md
/// </remarks>
public static class BuildPack
{
    /// <summary>Writes the pack.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rigFileText">The rig file it was computed from, as it was given; it goes into the pack unchanged.</param>
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
        ArgumentNullException.ThrowIfNull(rigFileText);
        ArgumentNullException.ThrowIfNull(options);
        using var language = new Speaking(options.Language);
        progress?.Report(new PlanProgress(Phrase.Of("progress.sheets"), 0));
        var named = Sections(plan, options);
        var sheets = SetOf(plan, options).Finish([.. named.Select(sheet => sheet.Draft)]);
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        progress?.Report(new PlanProgress(Phrase.Of("progress.pdf"), 0.3));
        files["build-pack.pdf"] = PdfWriter.Write(sheets, Words.Of("sheet.pack.title", plan.Rig.Name));
        progress?.Report(new PlanProgress(Phrase.Of("progress.drawings"), 0.5));
        var digits = sheets.Count < 100 ? "00" : "000";
        for (var i = 0; i < sheets.Count; i++)
        {
            var number = (i + 1).ToString(digits, CultureInfo.InvariantCulture);
            var svg = SvgWriter.Write(sheets[i], SvgOptions.File);
            files[$"sheets/{number}-{named[i].Name}.svg"] = Encoding.UTF8.GetBytes(svg);
        }

        progress?.Report(new PlanProgress(Phrase.Of("progress.lists"), 0.9));
        files["parts.csv"] = PlanLists.Parts(plan);
        files["cuts.csv"] = PlanLists.Cuts(plan);
        files["holes.csv"] = PlanLists.Holes(plan);
        files["plan.json"] = PlanJson.Write(plan);
        files[$"{FileNameOf(plan.Rig.Name)}.rig.json"] = Encoding.UTF8.GetBytes(rigFileText);
        progress?.Report(new PlanProgress(Phrase.Of("progress.done"), 1));
        return files;
    }

    /// <summary>Every sheet of the pack in its order, numbered and framed, without writing any file.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="options">Paper and title block.</param>
    public static IReadOnlyList<Sheet> Sheets(Plan plan, BuildPackOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        using var language = new Speaking(options.Language);
        return SetOf(plan, options).Finish([.. Sections(plan, options).Select(sheet => sheet.Draft)]);
    }

    /// <summary>A file name made of a rig's name: small letters, figures and dashes, never empty.</summary>
    /// <param name="rig">The rig's name.</param>
    public static string FileNameOf(string rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        var name = new StringBuilder();
        foreach (var letter in rig.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                name.Append(letter);
            }
            else if (name.Length > 0 && name[^1] != '-')
            {
                name.Append('-');
            }
        }

        var text = name.ToString().Trim('-');
        return text.Length == 0 ? "rig"
            : text.Length > 60 ? text[..60].Trim('-')
            : text;
    }

    private static SheetSet SetOf(Plan plan, BuildPackOptions options) =>
        new(
            options.Garden ?? plan.Rig.Site.Name,
            plan.Rig.Name,
            options.Revision,
            options.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            Words.Of(plan.Rig.Units == UnitSystem.Us ? "sheet.units.us" : "sheet.units.metric")
        );

    /// <summary>In the order of the job: see it, buy and make it, put it together, try it.</summary>
    private static List<(string Name, SheetDraft Draft)> Sections(Plan plan, BuildPackOptions options)
    {
        (string Name, Func<Plan, Paper, IReadOnlyList<SheetDraft>> Draw)[] sections =
        [
            ("cover", CoverSheet.Draw),
            ("plan-view", PlanView.Draw),
            ("front-view", FrontView.Draw),
            ("end-view", EndView.Draw),
            ("plumbing", PlumbingDiagram.Draw),
            ("hole-map", HoleMap.Draw),
            ("marking-strips", MarkingStrips.Draw),
            ("cuts", CutDiagrams.Draw),
            ("parts", PartsSheets.Draw),
            ("printed-parts", (p, paper) => PrintedSheets.Draw(p, options.Printed, paper)),
            ("water", PlotSheets.Draw),
            ("assembly", AssemblySheets.Draw),
            ("first-fill", FirstFillForm.Draw),
            ("mixing", MixingSheet.Draw),
            ("labels", StockLabels.Draw),
            ("feed-log", TankLog.Draw),
        ];
        return
        [
            .. sections.SelectMany(
                section => section.Draw(plan, options.Paper),
                (section, draft) => (section.Name, draft)
            ),
        ];
    }
}
