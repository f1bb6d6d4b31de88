using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Nutrients;
using Dripwright.Workbench.Pack;
using Dripwright.Workbench.Printed;
using Dripwright.Workbench.Revisions;

namespace Dripwright.Workbench.Rigs;

/// <summary>The piece of the page that each room has for itself. Each takes the rig as its parameter <c>Desk</c>.</summary>
internal static class RoomPieces
{
    private static readonly Dictionary<string, Type> s_all = new(StringComparer.Ordinal)
    {
        ["stand"] = typeof(StandRoom),
        ["water"] = typeof(WaterRoom),
        ["nutrients"] = typeof(NutrientsRoom),
        ["adjust"] = typeof(AdjustRoom),
        ["parts"] = typeof(PartsRoom),
        ["printed"] = typeof(PrintedRoom),
        ["pack"] = typeof(PackRoom),
        ["revisions"] = typeof(RevisionsRoom),
        ["file"] = typeof(FileRoom),
    };

    /// <summary>The piece of a room; null for a room of drawing, findings and inputs alone.</summary>
    public static Type? Of(Stage stage) => s_all.GetValueOrDefault(stage.Key);

    /// <summary>What it is given.</summary>
    public static Dictionary<string, object> For(RigDesk desk) => new(StringComparer.Ordinal) { ["Desk"] = desk };
}
