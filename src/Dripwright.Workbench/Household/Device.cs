namespace Dripwright.Workbench.Household;

/// <summary>What kind of browser and machine somebody came with, as far as it says so.</summary>
internal static class Device
{
    // The order matters: most browsers also call themselves by the names of others.
    private static readonly (string Mark, string Name)[] s_browsers =
    [
        ("Edg", "Edge"),
        ("OPR/", "Opera"),
        ("SamsungBrowser", "Samsung Internet"),
        ("Firefox", "Firefox"),
        ("FxiOS", "Firefox"),
        ("CriOS", "Chrome"),
        ("Chrom", "Chrome"),
        ("Safari", "Safari"),
        ("curl", "curl"),
    ];

    private static readonly (string Mark, string Name)[] s_machines =
    [
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Android", "Android"),
        ("Windows", "Windows"),
        ("CrOS", "Chromebook"),
        ("Mac OS X", "Mac"),
        ("Linux", "Linux"),
    ];

    /// <summary>Such as "Firefox, Android"; empty where it says nothing we know.</summary>
    /// <param name="agent">The header User-Agent.</param>
    public static string Of(string agent) =>
        string.Join(", ", new[] { Find(agent, s_browsers), Find(agent, s_machines) }.Where(word => word is not null));

    private static string? Find(string agent, (string Mark, string Name)[] among) =>
        among.FirstOrDefault(one => agent.Contains(one.Mark, StringComparison.Ordinal)).Name;
}
