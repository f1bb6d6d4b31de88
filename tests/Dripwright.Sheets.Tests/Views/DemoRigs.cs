using System.Runtime.CompilerServices;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Tests.Views;

/// <summary>Plans of the rig files in the demo folder, and all the sheets of this folder's subject.</summary>
internal static class DemoRigs
{
    public const string School = "school/greenhouse.rig.json";
    public const string FoodBank = "food-bank/back-room.rig.json";

    public static TheoryData<string> All =>
        [
            .. Directory
                .EnumerateFiles(Folder(), "*.rig.json", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(Folder(), f).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    public static Plan Plan(string name)
    {
        var reading = RigReader.Read(File.ReadAllBytes(Path.Combine(Folder(), name)), name, PartsCatalogue.Default);
        return Of(reading.Rig!, reading.Assumed);
    }

    public static Plan Of(Rig rig, IReadOnlyList<Assumed>? assumed = null) =>
        Planner.Of(rig, assumed ?? [], PartsCatalogue.Default);

    public static IReadOnlyList<SheetDraft> Drafts(Plan plan, Paper paper) =>
        [
            .. CoverSheet.Draw(plan, paper),
            .. PlanView.Draw(plan, paper),
            .. FrontView.Draw(plan, paper),
            .. EndView.Draw(plan, paper),
            .. PlumbingDiagram.Draw(plan, paper),
            .. AssemblySheets.Draw(plan, paper),
        ];

    public static Sheet Finished(Plan plan, SheetDraft draft) =>
        new SheetSet(
            plan.Rig.Site.Name,
            plan.Rig.Name,
            "",
            "",
            plan.Rig.Units == UnitSystem.Us ? "inches" : "mm"
        ).Finish([draft])[0];

    public static IEnumerable<Group> Groups(IEnumerable<Element> elements) =>
        elements.OfType<Group>().SelectMany(g => Groups(g.Children).Prepend(g));

    private static string Folder([CallerFilePath] string test = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(test)!, "../../../demo"));
}
