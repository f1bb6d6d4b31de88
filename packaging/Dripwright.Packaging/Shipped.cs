using System.Text.Json;

namespace Dripwright.Packaging;

/// <summary>A package some of whose files lie in a published folder.</summary>
/// <param name="Name">Its name in the registry.</param>
/// <param name="Version">Its version.</param>
internal sealed record Shipped(string Name, string Version)
{
    private const string Runtime = "runtimepack.";

    /// <summary>What a published folder is made of, by its own list of dependencies.</summary>
    /// <param name="folder">A folder that was published for one platform.</param>
    /// <exception cref="InvalidDataException">It is not such a folder.</exception>
    public static IReadOnlyList<Shipped> Read(string folder)
    {
        var file = Path.Combine(folder, "dripwright.deps.json");
        using var list = JsonDocument.Parse(File.ReadAllBytes(file));
        var target = list.RootElement.GetProperty("runtimeTarget").GetProperty("name").GetString()!;
        if (!target.Contains('/', StringComparison.Ordinal))
        {
            throw new InvalidDataException(
                $"{file}: found a program for any platform; expected one that is published for one."
            );
        }

        var kinds = list.RootElement.GetProperty("libraries");
        return
        [
            .. list
                .RootElement.GetProperty("targets")
                .GetProperty(target)
                .EnumerateObject()
                .Where(one => kinds.GetProperty(one.Name).GetProperty("type").GetString() is not "project")
                .Where(one => BringsFiles(one.Value))
                .Select(one => Of(one.Name))
                .OrderBy(one => one.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>Its folder among the packages that were restored.</summary>
    public string FolderIn(string packages) =>
        Path.Combine(packages, Name.ToLowerInvariant(), Version.ToLowerInvariant());

    private static bool BringsFiles(JsonElement library) =>
        new[] { "runtime", "native" }.Any(kind =>
            library.TryGetProperty(kind, out var files) && files.EnumerateObject().Any()
        );

    private static Shipped Of(string key)
    {
        var parts = key.Split('/');
        return new Shipped(
            parts[0].StartsWith(Runtime, StringComparison.Ordinal) ? parts[0][Runtime.Length..] : parts[0],
            parts[1]
        );
    }
}
