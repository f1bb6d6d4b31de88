using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Globalization;
using System.Text.Json;

namespace Dripwright.Language;

/// <summary>The texts of one language.</summary>
/// <param name="Language">Its name, as an HTML document names it.</param>
/// <param name="ByKey">Its texts.</param>
internal sealed record Texts(string Language, IReadOnlyDictionary<string, string> ByKey)
{
    private const string Fallback = "en";

    private static readonly ConcurrentDictionary<string, Texts> s_known = new(StringComparer.Ordinal);

    /// <summary>The texts of the reader at hand.</summary>
    public static Texts Current => Of(CultureInfo.CurrentUICulture);

    /// <summary>The texts of a culture: its own, those of its language, or the English ones.</summary>
    /// <param name="culture">The culture.</param>
    public static Texts Of(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return s_known.GetOrAdd(culture.Name, static name => Find(name));
    }

    /// <summary>Names of the languages that texts are built in of.</summary>
    public static IReadOnlyList<string> Languages() =>
        [
            .. typeof(Texts)
                .Assembly.GetManifestResourceNames()
                .Where(name => name.StartsWith("words/", StringComparison.Ordinal))
                .Select(name => name.Split('/')[1])
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    private static Texts Find(string name)
    {
        // Platforms spell its second half in small or in capital letters.
        if (name.Equals(Pseudo.Culture, StringComparison.OrdinalIgnoreCase))
        {
            return Pseudo.Of(Find(Fallback));
        }

        for (var at = name; at.Length > 0; at = at.LastIndexOf('-') is > 0 and var dash ? at[..dash] : "")
        {
            if (Read(at) is { Count: > 0 } texts)
            {
                return new Texts(at, Over(texts, Read(Fallback)));
            }
        }

        return new Texts(Fallback, Read(Fallback));
    }

    /// <summary>A language's texts, and the English ones for what it has not said yet: a translation may lag behind.</summary>
    internal static FrozenDictionary<string, string> Over(
        IReadOnlyDictionary<string, string> texts,
        IReadOnlyDictionary<string, string> english
    ) =>
        english.Keys.ToFrozenDictionary(
            key => key,
            key => texts.GetValueOrDefault(key, english[key]),
            StringComparer.Ordinal
        );

    // The files of a language share its keys among them by what they speak of.
    private static FrozenDictionary<string, string> Read(string language)
    {
        var assembly = typeof(Texts).Assembly;
        var start = $"words/{language}/";
        Dictionary<string, string> all = new(StringComparer.Ordinal);
        foreach (
            var name in assembly
                .GetManifestResourceNames()
                .Where(name => name.StartsWith(start, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
        )
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            foreach (var (key, text) in JsonSerializer.Deserialize<Dictionary<string, string>>(stream)!)
            {
                all.Add(key, text);
            }
        }

        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
