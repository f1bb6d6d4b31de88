using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Tests.Rigs;
using Dripwright.Language;
using Dripwright.Sheets.Lists;
using Dripwright.Sheets.Tests.Bench;
using Dripwright.Sheets.Tests.Drawing;
using Dripwright.Sheets.Tests.Views;

namespace Dripwright.Sheets.Tests;

/// <summary>In a language of marked and longer words the pack shows which of its words do not come from the texts.</summary>
public sealed class PseudoLanguageTests
{
    private static readonly CultureInfo s_pseudo = CultureInfo.GetCultureInfo("qps-ploc");

    public static TheoryData<string> Demos => [.. BenchPlans.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_word_of_a_pack_comes_from_the_texts(string demo) => AssertSpoken(BenchPlans.Demo(demo));

    [Fact]
    public void Every_word_of_the_pack_of_any_rig_comes_from_the_texts() =>
        RigGen.Rigs.Holds(rig => AssertSpoken(DemoRigs.Of(rig)), iter: 40);

    [Fact]
    public void An_english_word_of_its_own_would_be_found()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        Assert.Equal(["elbow"], new PseudoWords(plan).Own("⟦Cút⟧ 3 ½ in, elbow D1"));
        Assert.Empty(new PseudoWords(plan).Own($"⟦Cút⟧ 3 ½ in, {plan.Layout.Parts.Drain.Name}, D1"));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void No_text_leaves_the_sheet_when_words_are_a_third_longer(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        Assert.All(Spoken(() => BuildPack.Sheets(plan, new())), FlowTest.AssertInside);
    }

    [Fact]
    public void A_pack_is_written_in_the_language_asked_for_and_leaves_the_callers_as_it_was()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var before = CultureInfo.CurrentUICulture;
        var english = BuildPack.Write(plan, "{}", new());
        var pseudo = BuildPack.Write(plan, "{}", new() { Language = s_pseudo });
        Assert.Equal(before, CultureInfo.CurrentUICulture);
        Assert.NotEqual(english["build-pack.pdf"], pseudo["build-pack.pdf"]);
        Assert.Equal(english["cuts.csv"], pseudo["cuts.csv"]);
        Assert.Equal(Spoken(() => BuildPack.Write(plan, "{}", new()))["build-pack.pdf"], pseudo["build-pack.pdf"]);
    }

    [Fact]
    public void A_list_of_holes_tells_tool_and_face_in_the_readers_language_and_all_else_alike()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var (english, pseudo) = (Rows(plan), Spoken(() => Rows(plan)));
        Assert.Equal(english[0], pseudo[0]);
        Assert.Equal(english.Select(row => row[..^2]), pseudo.Select(row => row[..^2]));
        Assert.All(
            pseudo.Skip(1),
            row => Assert.All(row[^2..], cell => Assert.StartsWith("⟦", cell, StringComparison.Ordinal))
        );
    }

    private static List<string[]> Rows(Plan plan) =>
        [
            .. System
                .Text.Encoding.UTF8.GetString(PlanLists.Holes(plan))
                .Split("\r\n", StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Split(',')),
        ];

    private static void AssertSpoken(Plan plan)
    {
        var words = new PseudoWords(plan);
        var said = Spoken<List<string>>(() =>
            [
                .. BuildPack.Sheets(plan, new()).SelectMany(PlanTexts.OfSheet),
                .. PlanTexts.OfSummary(plan),
                .. PlanTexts.OfJson(plan),
            ]
        );
        Assert.Contains(said, text => text.Contains('⟦', StringComparison.Ordinal));
        List<string> own =
        [
            .. said.SelectMany(text => words.Own(text).Select(word => (word, text)))
                .DistinctBy(one => one.word)
                .Select(one => $"{one.word} in: {PlanTexts.Around(one.word, one.text)}"),
        ];
        Assert.True(own.Count == 0, string.Join("\n", own));
    }

    private static T Spoken<T>(Func<T> say)
    {
        using var language = new Speaking(s_pseudo);
        return say();
    }
}
