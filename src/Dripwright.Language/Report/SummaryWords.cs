using Dripwright.Engine.Units;

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

    /// <summary>How many of a thing: "1 pot", "1,200 pots".</summary>
    /// <param name="key">Key of the text; <c>.one</c> and <c>.many</c> stand in the file.</param>
    /// <param name="count">[-] How many.</param>
    public static string Several(string key, int count) =>
        Words.Of(count == 1 ? $"{key}.one" : $"{key}.many", QuantityWords.Count(count));
}
