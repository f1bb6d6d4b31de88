namespace Dripwright.Engine.Rigs;

/// <summary>From what the chemistry calls a thing to the field of the rig file that holds it.</summary>
internal static class NutrientPaths
{
    private const string Water = "nutrients.water";

    /// <summary>The field of a line of a water analysis, by its short name or symbol.</summary>
    public static string OfWater(string name) =>
        name switch
        {
            "alkalinity" => $"{Water}.alkalinity",
            "hardness" => $"{Water}.hardness",
            "EC" or "conductivity" => $"{Water}.conductivity",
            "pH" or "ph" => $"{Water}.ph",
            "Ca" or "ca" => $"{Water}.calcium",
            "Mg" or "mg" => $"{Water}.magnesium",
            "Na" or "na" => $"{Water}.sodium",
            "K" or "k" => $"{Water}.potassium",
            "Cl" or "cl" => $"{Water}.chloride",
            "S" or "s" => $"{Water}.sulfate",
            "NO3-N" or "n" => $"{Water}.nitrate",
            "NH4-N" => $"{Water}.ammonium",
            "B" or "b" => $"{Water}.boron",
            "Fe" or "fe" => $"{Water}.iron",
            "Mn" or "mn" => $"{Water}.manganese",
            "Zn" or "zn" => $"{Water}.zinc",
            _ => Water,
        };

    /// <summary>The field that cures a finding of the chemistry.</summary>
    public static string OfFinding(string field) =>
        field switch
        {
            "feed.salts" => "nutrients.salts",
            "feed.ammonium" => $"{Water}.ammonium",
            "feed.acid" => "nutrients.acid",
            "feed.ph" => "nutrients.ph",
            "feed.scale" => "nutrients.scaleStep",
            "feed.stock" => "nutrients.partsOfFeed",
            _ when field.StartsWith("water.", StringComparison.Ordinal) => OfWater(field["water.".Length..]),
            "water" => Water,
            _ => field,
        };
}
