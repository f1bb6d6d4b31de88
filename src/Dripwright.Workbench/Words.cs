using System.Globalization;
using System.Text.Json;
using Dripwright.Workbench.Hosting;

namespace Dripwright.Workbench;

/// <summary>What the pages say. A translation is one file beside <c>Words/en.json</c>.</summary>
public static class Words
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> s_all = new(() =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(Resource.Text($"words/{Language}.json"))!
    );

    /// <summary>The pages' language, as an HTML document names it.</summary>
    public static string Language => "en";

    /// <summary>All texts by key.</summary>
    internal static IReadOnlyDictionary<string, string> All => s_all.Value;

    /// <summary>The text of a key.</summary>
    /// <param name="key">The key, such as <c>rigs.title</c>.</param>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public static string Of(string key) => s_all.Value[key];

    /// <summary>The text of a key with values in the places <c>{0}</c>, <c>{1}</c>.</summary>
    /// <param name="key">The key.</param>
    /// <param name="values">The values.</param>
    /// <exception cref="KeyNotFoundException">There is no such text.</exception>
    public static string Of(string key, params ReadOnlySpan<object> values) =>
        string.Format(CultureInfo.InvariantCulture, Of(key), values.ToArray());

    /// <summary>The text for one, or for any other number.</summary>
    /// <param name="key">The key; <c>key.one</c> and <c>key.many</c> stand in the file.</param>
    /// <param name="count">How many.</param>
    public static string Count(string key, int count) => Of(count == 1 ? $"{key}.one" : $"{key}.many", count);

    /// <summary>The text of a key, or the given one where there is none.</summary>
    /// <param name="key">The key.</param>
    /// <param name="otherwise">What to say else.</param>
    public static string Or(string key, string otherwise) => s_all.Value.GetValueOrDefault(key, otherwise);
}
