using System.Runtime.CompilerServices;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Sheets.Tests.Bench;

/// <summary>Plans to draw: the invented gardens, the awkward rigs, and rigs written in a test.</summary>
internal static class BenchPlans
{
    public const string School = "school/greenhouse";
    public const string FoodBank = "food-bank/back-room";
    public const string Large = "awkward/five-hundred-pots";

    /// <summary>Nothing planted, so that every emitter is shut.</summary>
    public const string AllShut = """{ "rows": [{ "pots": 4, "planting": [] }], "feed": { "inlineValves": true } }""";

    private static readonly Dictionary<string, Plan> s_known = [];

    public static IEnumerable<string> Demos =>
        Directory
            .EnumerateFiles(Folder(), "*.rig.json", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Folder(), path).Replace('\\', '/')[..^".rig.json".Length])
            .Order(StringComparer.Ordinal);

    public static string TextOf(string demo) => File.ReadAllText(Path.Combine(Folder(), demo + ".rig.json"));

    public static Plan Demo(string demo)
    {
        lock (s_known)
        {
            return s_known.TryGetValue(demo, out var plan) ? plan : s_known[demo] = Of(TextOf(demo));
        }
    }

    public static Plan Of(string rigFile)
    {
        var reading = RigReader.Read(rigFile, "rig", PartsCatalogue.Default);
        Assert.Empty(reading.Faults);
        // Few draws: what is drawn from them does not depend on their number.
        var options = new PlanOptions { Draws = 200 };
        return Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default, options);
    }

    private static string Folder([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "demo"));
}
