namespace Dripwright.Engine.Proposing;

/// <summary>How many pots a brief asks for, and what stands in each.</summary>
internal static class BriefPots
{
    /// <summary>Pots of all crops; a pot holds one crop.</summary>
    public static int Count(Brief brief) => brief.Crops.Sum(c => Of(brief, c));

    /// <summary>Crop and plants of each pot, crop by crop; the last pot of a crop may hold fewer plants.</summary>
    public static List<(string Crop, int Plants)> List(Brief brief) =>
        [
            .. brief.Crops.SelectMany(c =>
                Enumerable
                    .Range(0, Of(brief, c))
                    .Select(i => (c.Crop, Math.Min(brief.PlantsPerPot, c.Plants - (i * brief.PlantsPerPot))))
            ),
        ];

    /// <summary>[m] From pot to pot: the widest that a crop asks for, and no less than the pot is long.</summary>
    public static double Spacing(Brief brief, double potLength) =>
        Math.Max(potLength, brief.Crops.Max(c => c.Spacing ?? CropSpacing.Of(c.Crop, brief.Units)));

    private static int Of(Brief brief, CropWish crop) => (crop.Plants + brief.PlantsPerPot - 1) / brief.PlantsPerPot;
}
