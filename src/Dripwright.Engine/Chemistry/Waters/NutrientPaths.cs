using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;

namespace Dripwright.Engine.Chemistry.Waters;

/// <summary>Fields of the rig file that hold what the chemistry speaks of.</summary>
internal static class NutrientPaths
{
    public const string Water = "nutrients.water";
    public const string Alkalinity = $"{Water}.alkalinity";
    public const string Hardness = $"{Water}.hardness";
    public const string Conductivity = $"{Water}.conductivity";
    public const string WaterPH = $"{Water}.ph";
    public const string PureShare = "nutrients.pureShare";
    public const string Salts = "nutrients.salts";
    public const string Bags = "nutrients.bags";
    public const string Target = "nutrients.target";
    public const string Acid = "nutrients.acid";
    public const string PH = "nutrients.ph";
    public const string Strength = "nutrients.strength";
    public const string ScaleStep = "nutrients.scaleStep";
    public const string PartsOfFeed = "nutrients.partsOfFeed";
    public const string StoreTemperature = "nutrients.storeTemperature";
    public const string Mixing = "nutrients.mixing";

    /// <summary>The line of the water analysis that says a constituent; the whole analysis where none does.</summary>
    public static string Of(Constituent constituent) =>
        constituent switch
        {
            Constituent.Calcium => $"{Water}.calcium",
            Constituent.Magnesium => $"{Water}.magnesium",
            Constituent.Sodium => $"{Water}.sodium",
            Constituent.Potassium => $"{Water}.potassium",
            Constituent.Chloride => $"{Water}.chloride",
            Constituent.Sulfur => $"{Water}.sulfate",
            Constituent.NitrateNitrogen => $"{Water}.nitrate",
            Constituent.AmmoniumNitrogen => $"{Water}.ammonium",
            Constituent.Boron => $"{Water}.boron",
            Constituent.Iron => $"{Water}.iron",
            Constituent.Manganese => $"{Water}.manganese",
            Constituent.Zinc => $"{Water}.zinc",
            Constituent.Copper => $"{Water}.copper",
            Constituent.Phosphorus => $"{Water}.phosphate",
            _ => Water,
        };

    /// <summary>A share as the file writes it, in whole per cent rounded up so that it still cures.</summary>
    public static string ShareText(double share) =>
        string.Create(CultureInfo.InvariantCulture, $"\"{Math.Ceiling((share * 100) - 1e-9):0} %\"");
}
