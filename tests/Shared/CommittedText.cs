using System.Runtime.CompilerServices;

namespace Dripwright.Tests;

/// <summary>Files of the repository that are made by the program and must stay in step with it: pages, schemas, drawings.</summary>
internal static class CommittedText
{
    /// <summary>The repository's root.</summary>
    public static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Dripwright.slnx")))
            {
                folder = folder.Parent;
            }
            return folder?.FullName ?? throw new InvalidOperationException("The tests must run inside the repository.");
        }
    }

    /// <summary>What a file holds.</summary>
    /// <param name="path">Path in the repository.</param>
    public static string Of(string path) => File.ReadAllText(Path.Combine(Root, path)).ReplaceLineEndings("\n");

    /// <summary>Asserts that the file holds the text; else writes the new text beside it and says how to accept it.</summary>
    /// <param name="path">Path in the repository.</param>
    /// <param name="expected">What the program makes.</param>
    public static void Is(string path, string expected)
    {
        var file = Path.Combine(Root, path);
        var received = Path.ChangeExtension(file, ".received" + Path.GetExtension(file));
        if (File.Exists(file) && Of(path) == expected)
        {
            File.Delete(received);
            return;
        }
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(received, expected);
        Assert.Fail($"{path} is out of step. Look at the new text; to accept it: mv {received} {file}");
    }

    /// <summary>The same for a page that is made in part: what stands between two marks is the program's.</summary>
    /// <param name="path">Path in the repository.</param>
    /// <param name="begin">Text just before the made part.</param>
    /// <param name="end">Text just after it; to the page's end where null.</param>
    /// <param name="made">What the program makes.</param>
    public static void Holds(string path, string begin, string? end, string made) => Holds(path, (begin, end, made));

    /// <summary>The same for a page with several made parts. One test judges them all: two would write over each other's new text.</summary>
    /// <param name="path">Path in the repository.</param>
    /// <param name="parts">Of each part the text before it, the text after it, and what the program makes.</param>
    public static void Holds(string path, params ReadOnlySpan<(string Begin, string? End, string Made)> parts)
    {
        var page = Of(path);
        foreach (var (begin, end, made) in parts)
        {
            var from = page.IndexOf(begin, StringComparison.Ordinal);
            var to = end is null ? page.Length : page.IndexOf(end, StringComparison.Ordinal);
            Assert.True(from >= 0 && to > from, $"{path} has lost the marks round its made part.");
            page = page[..(from + begin.Length)] + made + page[to..];
        }
        Is(path, page);
    }

    /// <summary>The same for a drawing in the folder "Golden" beside the test.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="expected">What the program makes.</param>
    /// <param name="test">The test's file.</param>
    public static void IsGolden(string name, string expected, [CallerFilePath] string test = "") =>
        Is(Path.GetRelativePath(Root, Path.Combine(Path.GetDirectoryName(test)!, "Golden", name)), expected);
}
