using System.Text.RegularExpressions;
using Dripwright.Language;
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

    [Fact]
    public void No_page_has_a_text_of_its_own_so_that_a_translation_is_one_file()
    {
        // Names of things, the same in every language.
        string[] names = ["Dripwright", "A4", "Letter", "3MF", "STL", "SVG", "PNG", "CSV"];
        var pages = Directory.GetFiles(Source(), "*.razor", SearchOption.AllDirectories);
        Assert.NotEmpty(pages);
        Assert.Contains("Buy", Own("<th>Buy</th>"));
        var own = pages.SelectMany(page =>
            Own(File.ReadAllText(page)).Except(names).Select(text => $"{Path.GetFileName(page)}: {text}")
        );
        Assert.Equal("", string.Join("\n", own));
    }

    // What stands between two marks, or is told to those who do not see, without being asked for.
    private static IEnumerable<string> Own(string page)
    {
        var marks = Remark().Replace(page, "").Split("@code {")[0];
        return TextOfItsOwn().Matches(marks).Select(match => match.Groups["text"].Value.Trim());
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

    [GeneratedRegex("""@\*.*?\*@""", RegexOptions.Singleline, 1000)]
    private static partial Regex Remark();

    [GeneratedRegex(
        """>(?<text>[^<>@{}();="&|]*[A-Za-z0-9]{2,}[^<>@{}();="&|]*)<(?=[/A-Za-z])|(?:aria-label|title|placeholder|alt)="(?<text>[^@"]+)["]""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex TextOfItsOwn();

    [GeneratedRegex("""Words\.(?<how>Of|Count)\("(?<key>[^"{}]+)"[,)]""", RegexOptions.None, 1000)]
    private static partial Regex Plain();
}
