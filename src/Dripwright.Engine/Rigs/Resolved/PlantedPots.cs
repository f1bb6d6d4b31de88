using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Rigs;

/// <summary>What one pot holds and how its emitters are set.</summary>
/// <param name="Crop">Crop in the grower's word, empty where not said.</param>
/// <param name="CropType">The catalogue's row of that crop; null where nothing grows.</param>
/// <param name="Plants">Plants; 0 where empty.</param>
/// <param name="Emitters">Emitters at it.</param>
/// <param name="ValveOpen">[-] How far they are open.</param>
/// <param name="Tube">[m] Length of their small tubes; null where it is the feed's.</param>
public readonly record struct PlantedPot(
    string Crop,
    CropType? CropType,
    int Plants,
    int Emitters,
    double ValveOpen,
    double? Tube = null
);

/// <summary>Spreads a row's planting entries over its pots.</summary>
internal static class PlantedPots
{
    /// <summary>One entry for each pot of the row, left to right.</summary>
    /// <param name="row">The row.</param>
    /// <param name="feed">The feed.</param>
    /// <param name="cropOf">The crop that a word means.</param>
    public static PlantedPot[] Of(Row row, Feed feed, Func<string, CropType> cropOf)
    {
        var open = feed.InlineValves ? feed.ValveOpen : 1;
        var empty = new PlantedPot("", null, 0, feed.EmittersAtEmptyPots ? feed.EmittersPerPot : 0, 0);
        var pots = new PlantedPot[row.Pots];
        Array.Fill(pots, row.Planting is null ? Unsaid(cropOf("")) : empty);
        foreach (var planting in row.Planting ?? [])
        {
            var crop = cropOf(planting.Crop);
            foreach (var pot in PotRange.Parse(planting.Pots, row.Pots))
            {
                pots[pot - 1] = new PlantedPot(
                    planting.Crop,
                    crop,
                    planting.Plants ?? crop.PlantsPerPot,
                    planting.Emitters ?? feed.EmittersPerPot,
                    // Without inline valves there is nothing to set: a planted pot's emitters are open.
                    feed.InlineValves
                        ? planting.ValveOpen ?? open
                        : 1,
                    planting.MicrotubeLength
                );
            }
        }

        return pots;

        PlantedPot Unsaid(CropType crop) => new("", crop, crop.PlantsPerPot, feed.EmittersPerPot, open);
    }
}
