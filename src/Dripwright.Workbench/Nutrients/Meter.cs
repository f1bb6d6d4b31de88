namespace Dripwright.Workbench.Nutrients;

/// <summary>What the meter of this browser's person shows. A meter that shows ppm is asked its scale once.</summary>
/// <param name="Key">Short name, kept in the browser.</param>
/// <param name="Unit">What is put behind a bare number.</param>
/// <param name="Scale">Scale of a ppm meter; null where it shows EC.</param>
/// <param name="Example">A reading of a usual tank.</param>
public sealed record Meter(string Key, string Unit, string? Scale, string Example)
{
    /// <summary>All kinds, the plain one first.</summary>
    public static IReadOnlyList<Meter> All { get; } =
    [
        new("ec", "dS/m", null, "1.6"),
        new("micro", "uS/cm", null, "1600"),
        new("ppm500", "ppm", "500", "800"),
        new("ppm640", "ppm", "640", "1020"),
        new("ppm700", "ppm", "700", "1120"),
    ];

    /// <summary>The kind of that name, or the plain one.</summary>
    /// <param name="key">Its name.</param>
    public static Meter Of(string? key) => All.FirstOrDefault(meter => meter.Key == key) ?? All[0];

    /// <summary>A reading with its unit: as typed where it has one.</summary>
    /// <param name="typed">What was typed.</param>
    public string Text(string typed) =>
        string.IsNullOrWhiteSpace(typed) || typed.Any(char.IsLetter) ? typed : $"{typed.Trim()} {Unit}";
}
