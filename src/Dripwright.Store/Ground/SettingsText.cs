using System.Text.Json;
using System.Text.Json.Serialization;
using Dripwright.Language;

namespace Dripwright.Store.Ground;

/// <summary>Settings as they stand in the database and in a garden file.</summary>
internal static class SettingsText
{
    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
    };

    public static string Write(GardenSettings settings) => JsonSerializer.Serialize(settings, s_options);

    /// <exception cref="JsonException">It is no settings.</exception>
    public static GardenSettings Read(string text) =>
        JsonSerializer.Deserialize<GardenSettings>(text, s_options) ?? new GardenSettings();

    /// <summary>What is wrong with settings, after their own place; null where all is well.</summary>
    public static string? Fault(GardenSettings settings) =>
        Limits.NameFault(settings.Name) is { } name ? $"settings: {name.TrimEnd('.')}"
        : settings.More.Any(setting => setting.Value is null || Limits.NoteFault(setting.Value) is not null)
            ? "settings.more: " + Words.Of("store.settings.more")
        : null;
}
