using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Store.Ground;

namespace Dripwright.Workbench.Rigs;

/// <summary>A rig in one line of a list.</summary>
internal static class RigLine
{
    /// <summary>Rows, pots and reservoir, or how many faults its file has.</summary>
    public static string Of(Draft draft, PartsCatalogue catalogue)
    {
        var reading = RigReader.Read(draft.Text, draft.Name, catalogue);
        if (reading.Resolved is not { Rig: var rig } resolved)
        {
            return Words.Count("rigs.faults", reading.Faults.Count);
        }

        var rows = rig.Rows.Sum(row => row.Count);
        var pots = rig.Rows.Sum(row => row.Count * row.Pots);
        var tank = new PlanWords(rig.Units).Of(resolved.Parts.Tank.Name);
        return $"{Words.Count("rigs.rows", rows)}, {Words.Count("rigs.pots", pots)}, {tank}";
    }
}
