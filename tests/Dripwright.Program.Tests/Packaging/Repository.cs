using System.Runtime.CompilerServices;

namespace Dripwright.Program.Tests.Packaging;

/// <summary>The repository that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = Up(Here());

    public static string Text(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Here([CallerFilePath] string here = "") => here;

    private static string Up(string from)
    {
        var folder = Path.GetDirectoryName(from)!;
        while (!File.Exists(Path.Combine(folder, "Dripwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
