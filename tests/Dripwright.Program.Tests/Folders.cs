namespace Dripwright.Program.Tests;

/// <summary>The repository's own files.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string School => Path.Combine(Root, "demo", "school", "greenhouse.rig.json");

    public static string FoodBank => Path.Combine(Root, "demo", "food-bank", "back-room.rig.json");

    public static string OnePot => Path.Combine(Root, "demo", "awkward", "one-pot.rig.json");

    private static string Find()
    {
        var at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "Dripwright.slnx")))
        {
            at = Path.GetDirectoryName(at) ?? throw new InvalidOperationException("Not within the repository.");
        }

        return at;
    }
}

/// <summary>A folder of its own for a test, removed with all that is in it.</summary>
internal sealed class Scratch : IDisposable
{
    public Scratch() => Folder = Directory.CreateTempSubdirectory("dripwright-test-").FullName;

    public string Folder { get; }

    public string At(string name) => Path.Combine(Folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    /// <summary>Everything in the folder, hidden or not.</summary>
    public IReadOnlyList<string> Names =>
        [
            .. Directory
                .EnumerateFileSystemEntries(Folder, "*", SearchOption.AllDirectories)
                .Select(path => Path.GetRelativePath(Folder, path).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
