using System.Text.RegularExpressions;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Units;
using Dripwright.Engine.Water;
using Dripwright.Engine.Wires;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Documents;

/// <summary>Where the handbook lists the words that a field may hold, they are all that the code knows.</summary>
public sealed partial class HandbookWordsTests
{
    private static readonly Dictionary<(string Page, string Field), string[]> s_known = new()
    {
        [("garden-file", "units")] = Words<UnitSystem>(),
        [("plan-json", "units")] = Words<UnitSystem>(),
        [("plan-json", "level")] = Words<FindingLevel>(),
        [("plan-json", "line")] = ["front", "back"],
        [("plan-json", "service")] = Words<RunService>(),
        [("plan-json", "use")] = Words<HoleUse>(),
        [("plan-json", "role")] = Words<MemberRole>(),
        [("plan-json", "class")] = Words<UniformityClass>(),
        [("plan-json", "plantBasis")] = Words<CropLoadBasis>(),
        [("plan-json", "verdict")] = Words<ElementVerdict>(),
        [("plan-json", "weakestBy")] = Words<UseKind>(),
        [("plan-json", "cure")] = Words<CureKind>(),
        [("plan-json", "method")] = Words<CutMethod>(),
        [("plan-json", "face")] = Words<HoleFace>(),
    };

    public static TheoryData<string, string> Fields => [.. s_known.Keys.Select(key => (key.Page, key.Field))];

    [Theory]
    [MemberData(nameof(Fields))]
    public void Words_of_a_field_are_those_of_the_code(string page, string field)
    {
        var listed = Listed(page).Where(list => list.Field == field).ToList();
        Assert.NotEmpty(listed);
        Assert.All(listed, list => Assert.Equal(s_known[(page, field)].Order(), list.Words.Order()));
    }

    // A new list of words is held against the code too.
    [Fact]
    public void Every_list_of_words_is_known_here()
    {
        var pages = Directory
            .EnumerateFiles(Path.Combine(CommittedText.Root, "docs", "handbook"), "*.md")
            .Select(path => Path.GetFileNameWithoutExtension(path));
        Assert.Empty(pages.SelectMany(page => Listed(page).Select(list => (page, list.Field))).Except(s_known.Keys));
    }

    /// <summary>"`field` whatever (`word`, `other`: what it means, ...)".</summary>
    private static IEnumerable<(string Field, string[] Words)> Listed(string page) =>
        from match in Lists().Matches(CommittedText.Of($"docs/handbook/{page}.md"))
        select (
            match.Groups["field"].Value,
            match.Groups["words"].Value.Split('`').Where((_, n) => n % 2 == 1).ToArray()
        );

    private static string[] Words<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(EnumWords.Of)];

    [GeneratedRegex(
        @"`(?<field>[a-z][A-Za-z]+)`[^`()|;,]{0,40}\((?<words>`[a-z][a-z-]*`(?:: [^`()]+)?(?:(?:, | or )`[a-z][a-z-]*`(?:: [^`()]+)?)+)[^`()]*\)"
    )]
    private static partial Regex Lists();
}
