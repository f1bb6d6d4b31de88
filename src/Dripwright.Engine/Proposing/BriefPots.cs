using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Proposing;

/// <summary>How many pots a brief asks for, and what stands in each.</summary>
internal static class BriefPots
{
    /// <summary>Pots of all crops; a pot holds one crop.</summary>
    public static int Count(Brief brief, PartsCatalogue catalogue) => brief.Crops.Sum(c => Of(brief, c, catalogue));

    /// <summary>Crop and plants of each pot, crop by crop; the last pot of a crop may hold fewer plants.</summary>
    public static List<(string Crop, int Plants)> List(Brief brief, PartsCatalogue catalogue) =>
        [
            .. brief.Crops.SelectMany(c =>
            {
                var each = InAPot(brief, c, catalogue);
                return Enumerable
                    .Range(0, Of(brief, c, catalogue))
                    .Select(i => (c.Crop, Math.Min(each, c.Plants - (i * each))));
            }),
        ];

    /// <summary>[m] From pot to pot: the widest that a crop asks for, and no less than the pot is long.</summary>
    public static double Spacing(Brief brief, double potLength, PartsCatalogue catalogue) =>
        Math.Max(potLength, Asked(brief, catalogue));

    /// <summary>[m] The widest spacing that a crop asks for: the grower's, or else what is usual for it.</summary>
    public static double Asked(Brief brief, PartsCatalogue catalogue) =>
        brief.Crops.Max(c => c.Spacing ?? catalogue.CropOrOther(c.Crop)!.SpacingIn(brief.Units));

    /// <summary>[m³/s] What all plants drink in a hot week.</summary>
    public static double Use(Brief brief, PartsCatalogue catalogue) =>
        brief.Crops.Sum(c => c.Plants * (brief.UsePerPlant ?? catalogue.CropOrOther(c.Crop)!.UsePerPlant));

    private static int Of(Brief brief, CropWish crop, PartsCatalogue catalogue)
    {
        var each = InAPot(brief, crop, catalogue);
        return (crop.Plants + each - 1) / each;
    }

    private static int InAPot(Brief brief, CropWish crop, PartsCatalogue catalogue) =>
        brief.PlantsPerPot ?? catalogue.CropOrOther(crop.Crop)!.PlantsPerPot;
}
