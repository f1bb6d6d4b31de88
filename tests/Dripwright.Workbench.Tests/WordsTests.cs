using System.Text.RegularExpressions;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Tests;

public sealed partial class WordsTests
{
    [Fact]
    public void Every_text_a_page_asks_for_is_in_the_file_of_words()
    {
        var folder = Source();
        var asked = Directory
            .EnumerateFiles(folder, "*.*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".razor" or ".cs")
            .SelectMany(file => Plain().Matches(File.ReadAllText(file)))
            .SelectMany(match =>
                match.Groups["how"].Value == "Count"
                    ? new[] { match.Groups["key"].Value + ".one", match.Groups["key"].Value + ".many" }
                    : [match.Groups["key"].Value]
            )
            .Distinct()
            .ToList();
        Assert.NotEmpty(asked);
        Assert.All(asked, key => Assert.True(Words.All.ContainsKey(key), key));
    }

    [Fact]
    public void Every_room_has_its_name_and_every_field_of_the_rig_file_has_its_room()
    {
        Assert.All(Stage.All, stage => Assert.NotEmpty(stage.Name));
        Assert.All(FormField.Root, field => Assert.Contains(Stage.All, stage => stage.Fields.Contains(field.Path)));
    }

    private static string Source()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Dripwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return Path.Combine(folder, "src", "Dripwright.Workbench");
    }

    [GeneratedRegex("""Words\.(?<how>Of|Count)\("(?<key>[^"{}]+)"[,)]""", RegexOptions.None, 1000)]
    private static partial Regex Plain();
}
