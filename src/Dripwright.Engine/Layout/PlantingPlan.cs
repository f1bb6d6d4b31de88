using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>What one pot holds and how its emitters are set.</summary>
/// <param name="Crop">Crop tag, empty where not said.</param>
/// <param name="Plants">Plants; 0 where empty.</param>
/// <param name="Emitters">Emitters at it.</param>
/// <param name="ValveOpen">[-] How far they are open.</param>
internal readonly record struct PlantedPot(string Crop, int Plants, int Emitters, double ValveOpen);

/// <summary>Spreads a row's planting entries over its pots.</summary>
internal static class PlantingPlan
{
    /// <summary>One entry for each pot of the row, left to right.</summary>
    public static PlantedPot[] Of(Row row, Feed feed)
    {
        double open = feed.InlineValves ? feed.ValveOpen : 1;
        var empty = new PlantedPot("", 0, feed.EmittersAtEmptyPots ? feed.EmittersPerPot : 0, 0);
        var pots = new PlantedPot[row.Pots];
        Array.Fill(pots, row.Planting is null ? new PlantedPot("", 1, feed.EmittersPerPot, open) : empty);
        foreach (Planting planting in row.Planting ?? [])
        {
            foreach (int pot in PotRange.Parse(planting.Pots, row.Pots))
            {
                pots[pot - 1] = new PlantedPot(
                    planting.Crop,
                    planting.Plants,
                    planting.Emitters ?? feed.EmittersPerPot,
                    // Without inline valves there is nothing to set: a planted pot's emitters are open.
                    feed.InlineValves
                        ? planting.ValveOpen ?? open
                        : 1
                );
            }
        }

        return pots;
    }
}
