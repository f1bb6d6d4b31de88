using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Stands.Sections;

/// <summary>Steels of stand tubes with their published minimum strengths.</summary>
public static class Steels
{
    /// <summary>[Pa] One kip per square inch.</summary>
    internal const double Ksi = 1000 * 4.4482216152605 / (0.0254 * 0.0254);

    private const string A513 =
        "ASTM A513 type 1 as welded, minimum values as printed in a steel service centre's sheet";
    private const string A500 = "ASTM A500, minimum values as reproduced in a tube maker's table";

    /// <summary>The weakest common welded tube; stands in where no strength is promised.</summary>
    public static Steel Weakest { get; } = Grade("a513-1008", "Welded tube, 1008", 30, 42, A513);

    /// <summary>Electrical conduit, which is sold by size and not by strength.</summary>
    public static Steel Conduit { get; } =
        Weakest with
        {
            Key = "conduit",
            Name = "Conduit, taken as welded tube 1008",
            Assumed = true,
            Source = "no yield is promised for conduit (ANSI C80.3): the weakest grade of " + A513 + " stands in",
        };

    /// <summary>Tube of a grade that nobody named.</summary>
    public static Steel Unknown { get; } =
        Weakest with
        {
            Key = "unknown",
            Name = "Grade not known, taken as welded tube 1008",
            Assumed = true,
            Source = "the grade is not known: the weakest grade of " + A513 + " stands in",
        };

    /// <summary>Every steel, weakest first.</summary>
    public static IReadOnlyList<Steel> All { get; } =
    [
        Weakest,
        Conduit,
        Unknown,
        Grade("a513-1010", "Welded tube, 1010", 32, 45, A513),
        Grade("a500-a-round", "Structural round tube, grade A", 33, 45, A500),
        Grade("a513-1015", "Welded tube, 1015", 35, 48, A513),
        Grade("a513-1020", "Welded tube, 1020", 38, 52, A513),
        Grade("a500-b-round", "Structural round tube, grade B", 42, 58, A500),
        Grade("a500-c-round", "Structural round tube, grade C", 46, 62, A500),
    ];

    /// <summary>What a tube of the catalogue may be counted on for: its size says nothing of its grade.</summary>
    /// <param name="tube">Its size.</param>
    public static Steel For(TubeSize tube)
    {
        ArgumentNullException.ThrowIfNull(tube);
        return tube.Key.StartsWith("emt-", StringComparison.Ordinal) ? Conduit : Unknown;
    }

    /// <summary>The steel that a rig names; null where it does not know.</summary>
    /// <param name="steel">As in the rig file.</param>
    public static Steel? Named(TubeSteel steel) =>
        steel switch
        {
            TubeSteel.Welded1010 => Key("a513-1010"),
            TubeSteel.Welded1015 => Key("a513-1015"),
            TubeSteel.Welded1020 => Key("a513-1020"),
            TubeSteel.StructuralA => Key("a500-a-round"),
            TubeSteel.StructuralB => Key("a500-b-round"),
            TubeSteel.StructuralC => Key("a500-c-round"),
            _ => null,
        };

    private static Steel Key(string key) => All.First(s => s.Key == key);

    private static Steel Grade(string key, string name, double yieldKsi, double tensileKsi, string source) =>
        new(key, name, yieldKsi * Ksi, tensileKsi * Ksi, false, source);
}
