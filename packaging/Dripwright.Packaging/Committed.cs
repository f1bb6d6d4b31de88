using System.Text.Json;

namespace Dripwright.Packaging;

/// <summary>Work of others that lies in the repository itself and so in every program made from it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Version">Its version.</param>
/// <param name="Licence">Its licence's SPDX name.</param>
/// <param name="Text">The file with the licence's text, from the root of the repository.</param>
/// <param name="Purl">Its package URL, where a registry has it.</param>
internal sealed record Committed(string Name, string Version, string Licence, string Text, string? Purl)
{
    private static readonly JsonSerializerOptions s_reading = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
    };

    /// <summary>The list in <c>packaging/committed.json</c>.</summary>
    /// <param name="root">Root of the repository.</param>
    public static IReadOnlyList<Committed> Read(string root) =>
        JsonSerializer.Deserialize<List<Committed>>(
            File.ReadAllBytes(Path.Combine(root, "packaging", "committed.json")),
            s_reading
        )!;
}
