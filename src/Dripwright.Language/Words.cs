using System.Globalization;

namespace Dripwright.Language;

/// <summary>Every text by its key, in the language of <see cref="CultureInfo.CurrentUICulture"/>; in English where there is none.</summary>
/// <remarks>
/// The platform carries the language of a reader with each request, page and thread; nothing here remembers it. A translation is one
/// file with the same keys. Values that go into a text are told without regard to the culture.
/// </remarks>
public static class Words
{
    /// <summary>The language in use, as an HTML document names it.</summary>
    public static string Language => Texts.Current.Language;

    /// <summary>All texts by key.</summary>
    internal static IReadOnlyDictionary<string, string> All => Texts.Current.ByKey;

    /// <summary>The text of a key.</summary>
    /// <param name="key">The key, such as <c>rigs.title</c>.</param>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public static string Of(string key) =>
        All.TryGetValue(key, out var text) ? text : throw new KeyNotFoundException($"There is no text '{key}'.");

    /// <summary>The text of a key with values in the places <c>{0}</c>, <c>{1}</c>.</summary>
    /// <param name="key">The key.</param>
    /// <param name="values">The values.</param>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public static string Of(string key, params ReadOnlySpan<object> values) =>
        string.Format(CultureInfo.InvariantCulture, Of(key), values);

    /// <summary>The text for one, or for any other number.</summary>
    /// <param name="key">The key; <c>key.one</c> and <c>key.many</c> stand in the file.</param>
    /// <param name="count">[-] How many; it stands in the first place.</param>
    public static string Count(string key, int count) => Of(count == 1 ? $"{key}.one" : $"{key}.many", count);

    /// <summary>The text of a key, or the given English one where there is none: a description that the code itself carries.</summary>
    /// <param name="key">The key.</param>
    /// <param name="otherwise">What to say else.</param>
    public static string Or(string key, string otherwise) =>
        All.TryGetValue(key, out var text) ? text
        : Language == Pseudo.Culture ? Pseudo.Of(otherwise)
        : otherwise;
}
