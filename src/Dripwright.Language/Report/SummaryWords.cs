namespace Dripwright.Language.Report;

/// <summary>Names of parts within the summary's sentences.</summary>
internal static class SummaryWords
{
    /// <summary>A name as it stands within a sentence: "Poly hose" becomes "poly hose", "PVC pipe" stays.</summary>
    public static string Small(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1])
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;

    /// <summary>A name as it stands at the start of a line.</summary>
    public static string Large(string name) => name.Length > 0 ? char.ToUpperInvariant(name[0]) + name[1..] : name;
}
