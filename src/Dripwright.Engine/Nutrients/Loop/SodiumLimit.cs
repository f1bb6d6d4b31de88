using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Nutrients.Loop;

/// <summary>How much sodium a crop stands in the root zone or drain, by two generations of sources.</summary>
/// <param name="Classic">[mol/m³] The norm of the 1980s and 1990s, kept by laboratories.</param>
/// <param name="Newer">[mol/m³] What newer trials found harmless; null where none was found.</param>
/// <param name="Source">Whose numbers.</param>
/// <param name="Warning">What the newer number costs.</param>
public sealed record SodiumLimit(double Classic, double? Newer, string Source, string Warning)
{
    /// <summary>The limit of a crop, as the catalogue has it.</summary>
    /// <remarks>
    /// No table of chloride limits by crop was found that could be read; chloride comes with sodium and is taken up more
    /// readily, so a water good for sodium is good for chloride. A grower's own limit can be given in their catalogue.
    /// </remarks>
    /// <param name="crop">The crop.</param>
    /// <exception cref="ArgumentException">The crop's row has no limit.</exception>
    public static SodiumLimit Of(CropType crop)
    {
        ArgumentNullException.ThrowIfNull(crop);
        return crop.SodiumMillimolesPerLitre is { } classic
            ? new SodiumLimit(classic, crop.NewerSodiumMillimolesPerLitre, crop.SodiumSource, crop.SodiumWarning)
            : throw new ArgumentException($"The catalogue has no sodium limit for {crop.Name}.", nameof(crop));
    }
}
