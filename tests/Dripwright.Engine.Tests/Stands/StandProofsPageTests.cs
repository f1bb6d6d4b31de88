using System.Text.RegularExpressions;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>The page that says which test proves what names tests that there are.</summary>
public sealed partial class StandProofsPageTests
{
    [Fact]
    public void Every_test_that_the_page_of_proofs_names_is_there()
    {
        var root = CommittedText.Root;
        var page = File.ReadAllText(Path.Combine(root, "docs", "methods", "stand-proofs.md"));
        string[] named = [.. TestNames().Matches(page).Select(m => m.Groups["name"].Value).Distinct()];
        var code = string.Join(
            "\n",
            Directory
                .EnumerateFiles(Path.Combine(root, "tests"), "*.cs", SearchOption.AllDirectories)
                .Select(File.ReadAllText)
        );

        Assert.True(named.Length > 50);
        Assert.All(named, name => Assert.Contains($" {name}(", code, StringComparison.Ordinal));
    }

    // A sentence with underscores between backquotes.
    [GeneratedRegex("`(?<name>[A-Z][A-Za-z0-9]*_[A-Za-z0-9_]+)`", RegexOptions.None, 5000)]
    private static partial Regex TestNames();
}
