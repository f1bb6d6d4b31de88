namespace Dripwright.Sheets.Model;

/// <summary>
/// The only place with colours. Each role keeps its darkness order in grey print; on paper the paper stays unprinted.
/// </summary>
/// <param name="Name">Name of the scheme.</param>
/// <param name="Colours">Colour of each role as #rrggbb.</param>
/// <param name="Tints">Pale colour of each role for surfaces as #rrggbb.</param>
public sealed record Palette(
    string Name,
    IReadOnlyDictionary<DrawnRole, string> Colours,
    IReadOnlyDictionary<DrawnRole, string> Tints
)
{
    /// <summary>Warm paper on the screen.</summary>
    public static Palette Light { get; } =
        new(
            "light",
            Map("#1c1b19", "#45433f", "#0b539c", "#3a7fc1", "#2b6e34", "#a5331f", "#8f5f00", "#bdb8ad", "#fdfbf5"),
            Map("#e6e3dc", "#efede7", "#dbe8f4", "#e6f0f9", "#dfecdf", "#f4dfda", "#f6ead0", "#f1eee7", "#fdfbf5")
        );

    /// <summary>As <see cref="Light"/> with white paper, for printing.</summary>
    public static Palette Print { get; } =
        Light with
        {
            Name = "print",
            Colours = new Dictionary<DrawnRole, string>(Light.Colours) { [DrawnRole.Paper] = "#ffffff" },
            Tints = new Dictionary<DrawnRole, string>(Light.Tints) { [DrawnRole.Paper] = "#ffffff" },
        };

    /// <summary>Blueprint: the same roles on dark blue.</summary>
    public static Palette Dark { get; } =
        new(
            "dark",
            Map("#f2efe6", "#bcc9d8", "#7cc4ff", "#a9cdea", "#8fd694", "#ff9c86", "#f0c15a", "#4a6480", "#14304d"),
            Map("#2a4663", "#203c58", "#1d4a75", "#26476a", "#224a41", "#54353c", "#4c432f", "#1b3856", "#14304d")
        );

    private static Dictionary<DrawnRole, string> Map(params string[] colours) =>
        Enum.GetValues<DrawnRole>().Zip(colours).ToDictionary(pair => pair.First, pair => pair.Second);
}
