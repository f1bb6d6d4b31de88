namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>The crops whose limits are known here.</summary>
public enum LoopCrop
{
    /// <summary>Tomato.</summary>
    Tomato,

    /// <summary>Cucumber.</summary>
    Cucumber,

    /// <summary>Sweet pepper.</summary>
    SweetPepper,
}

/// <summary>How much sodium a crop stands in the root zone or drain, by two generations of sources.</summary>
/// <param name="Classic">[mol/m³] The norm of the 1980s and 1990s, kept by laboratories.</param>
/// <param name="Newer">[mol/m³] What newer trials found harmless; null where none was found.</param>
/// <param name="Source">Whose numbers.</param>
/// <param name="Warning">What the newer number costs.</param>
public sealed record SodiumLimit(double Classic, double? Newer, string Source, string Warning)
{
    /// <summary>The limit of a crop.</summary>
    /// <remarks>
    /// No table of chloride limits by crop was found that could be read; chloride comes with sodium and is taken up more
    /// readily, so a water good for sodium is good for chloride. A grower's own limit can be given.
    /// </remarks>
    /// <param name="crop">The crop.</param>
    /// <exception cref="ArgumentOutOfRangeException">The crop has no entry.</exception>
    public static SodiumLimit Of(LoopCrop crop) =>
        crop switch
        {
            LoopCrop.Tomato => new(
                8,
                15,
                "Glastuinbouw Nederland and onderglas.nl on sodium limits; laboratory table of 2016: 6",
                "At 15 mmol/L more blossom-end rot was seen in 2018."
            ),
            LoopCrop.SweetPepper => new(
                6,
                10,
                "onderglas.nl on sodium limits",
                "Without effect on yield at a drain EC of 2.5 to 3.0 dS/m."
            ),
            LoopCrop.Cucumber => new(
                6,
                null,
                "a horticultural laboratory's table of 2016 on sodium in irrigation water",
                ""
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(crop), crop, "The crop has no entry."),
        };
}
