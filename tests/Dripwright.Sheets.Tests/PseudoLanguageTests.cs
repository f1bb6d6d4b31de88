using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Tests.Drawing;
using Dripwright.Sheets.Tests.Views;

namespace Dripwright.Sheets.Tests;

/// <summary>In a language of marked and longer words it shows which words of a sheet do not come from the texts.</summary>
public sealed partial class PseudoLanguageTests
{
    // Units, and the name of the program and of a paper, are the same in every language.
    private static readonly string[] Same = ["in", "gal", "min", "per", "Dripwright", "Letter"];

    private static readonly CultureInfo Pseudo = CultureInfo.GetCultureInfo("qps-ploc");

    public static TheoryData<string> Demos => [BenchPlans.School, BenchPlans.FoodBank];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_word_of_views_and_steps_comes_from_the_texts(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var (sheets, others) = Speaking(Pseudo, () => (Sheets(plan), OthersWords(plan)));
        Assert.Contains('⟦', string.Concat(SheetText.Of(sheets[0]).Select(text => text.Text.Content)));
        var own = sheets.SelectMany(sheet => Said(sheet).SelectMany(said => Own(said, others))).Distinct().ToList();
        Assert.Equal("", string.Join("\n", own));
    }

    [Fact]
    public void An_english_word_of_its_own_would_be_found()
    {
        Assert.Equal(["pipe"], Own("⟦Cút⟧ 3 ½ in, pipe D1", []));
        Assert.Empty(Own("⟦Cút⟧ 3 ½ in, drain pipe 2, D1", ["drain pipe 2"]));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void No_text_leaves_the_sheet_when_words_are_a_third_longer(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        Assert.All(Speaking(Pseudo, () => Sheets(plan)), FlowTest.AssertInside);
    }

    [Fact]
    public void A_pack_is_written_in_the_language_asked_for_and_leaves_the_callers_as_it_was()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var before = CultureInfo.CurrentUICulture;
        var english = BuildPack.Write(plan, "{}", new());
        var pseudo = BuildPack.Write(plan, "{}", new() { Language = Pseudo });
        Assert.Equal(before, CultureInfo.CurrentUICulture);
        Assert.NotEqual(english["build-pack.pdf"], pseudo["build-pack.pdf"]);
        Assert.Equal(english["cuts.csv"], pseudo["cuts.csv"]);
        Assert.Equal(english["holes.csv"], pseudo["holes.csv"]);
        Assert.Equal(
            Speaking(Pseudo, () => BuildPack.Write(plan, "{}", new()))["build-pack.pdf"],
            pseudo["build-pack.pdf"]
        );
    }

    private static IReadOnlyList<Sheet> Sheets(Plan plan) =>
        new SheetSet(plan.Rig.Site.Name, plan.Rig.Name, "", "", "mm").Finish(DemoRigs.Drafts(plan, Paper.A4));

    private static T Speaking<T>(CultureInfo language, Func<T> say)
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = language;
            return say();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    // Lines of a paragraph follow one another, so that a name broken over two lines is whole again.
    private static IEnumerable<string> Said(Sheet sheet) =>
        [
            string.Join(' ', SheetText.Of(sheet).Select(text => text.Text.Content)),
            sheet.Title,
            sheet.Description ?? "",
            .. DemoRigs
                .Groups(sheet.Elements)
                .SelectMany(group => new[] { group.Title ?? "", group.Description ?? "" }),
        ];

    /// <summary>Words that the sheets take from elsewhere: the catalogue, the grower, and what the plan has to say.</summary>
    private static List<string> OthersWords(Plan plan)
    {
        var layout = plan.Layout;
        var summary = PlanSummary.Of(plan);
        IEnumerable<string> all =
        [
            .. layout.Parts.Catalogue.All.Select(entry => entry.Name),
            plan.Rig.Name,
            plan.Rig.Site.Name,
            .. layout.Rows.SelectMany(row => row.Pots).Select(pot => pot.Crop),
            .. layout.Stand.Members.Select(member => member.Label),
            .. layout.Wires.Select(wire => wire.Label),
            .. new PlanWords(plan.Rig.Units)
                .Of(plan.Findings)
                .SelectMany(told => new[] { told.Place, told.What, told.Value, told.Limit, told.Remedy, told.Source }),
            summary.Sentence,
            .. summary
                .Groups.SelectMany(group => group.Figures)
                .SelectMany(figure => new[] { figure.Name, figure.Value, figure.Remark }),
            .. summary.Groups.Select(group => group.Heading),
        ];
        return
        [
            .. all.SelectMany(text => new[] { Spaced(text), Spaced(Wording.Sentence(text)) })
                .Where(text => text.Length > 0)
                .Distinct()
                .OrderByDescending(text => text.Length),
        ];
    }

    private static IEnumerable<string> Own(string said, IEnumerable<string> others)
    {
        var left = Spaced(said);
        foreach (var other in others)
        {
            left = Regex.Replace(left, $@"(?<!\w){Regex.Escape(other)}(?!\w)", " ", RegexOptions.None, Patience);
        }

        return Word().Matches(left).Select(match => match.Value).Where(word => !Same.Contains(word));
    }

    private static string Spaced(string text) => Space().Replace(text, " ").Trim();

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Space();

    // Every English word that the pseudo-language has not touched holds a vowel without an accent; labels such as D1 are no words.
    [GeneratedRegex(@"(?<![\w\p{M}])(?=\p{L}*[aeiouAEIOU])\p{L}{2,}(?![\w])", RegexOptions.None, 5000)]
    private static partial Regex Word();
}
