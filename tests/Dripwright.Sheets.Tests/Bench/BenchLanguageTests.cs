using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Sheets.Bench;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Nutrients;
using Dripwright.Sheets.Screen;

namespace Dripwright.Sheets.Tests.Bench;

public sealed partial class BenchLanguageTests
{
    // Units that look like words.
    private static readonly HashSet<string> s_elsewhere = new(StringComparer.Ordinal) { "gal", "min", "kpa", "psi" };

    public static TheoryData<string> Demos => [BenchPlans.School, BenchPlans.FoodBank, BenchPlans.Large];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Every_word_of_a_bench_sheet_comes_from_the_texts_or_is_a_name_of_the_catalogue_or_the_grower(
        string demo
    )
    {
        var plan = BenchPlans.Demo(demo);
        var known = KnownWords(plan);
        var drafts = Pseudo(() =>
            (List<SheetDraft>)
                [
                    .. HoleMap.Draw(plan, Paper.A4),
                    .. CutDiagrams.Draw(plan, Paper.A4),
                    .. PartsSheets.Draw(plan, Paper.A4),
                    .. PlotSheets.Draw(plan, Paper.A4),
                    .. FirstFillForm.Draw(plan, Paper.A4),
                ]
        );
        Assert.All(drafts, draft => Assert.StartsWith("⟦", draft.Title, StringComparison.Ordinal));
        Assert.All(
            drafts.SelectMany(draft => SheetText.Of(draft.Elements)).Select(text => text.Text.Content),
            text => Assert.All(PlainWords(text), word => Assert.True(known.Contains(word), $"'{word}' in '{text}'"))
        );
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Texts_of_bench_sheets_stay_on_the_paper_when_a_third_longer(string demo)
    {
        var plan = BenchPlans.Demo(demo);
        var drafts = Pseudo(() =>
            (List<SheetDraft>)
                [
                    .. HoleMap.Draw(plan, Paper.A4),
                    .. MarkingStrips.Draw(plan, Paper.A4),
                    .. CutDiagrams.Draw(plan, Paper.A4),
                    .. PartsSheets.Draw(plan, Paper.A4),
                    .. PlotSheets.Draw(plan, Paper.A4),
                    .. FirstFillForm.Draw(plan, Paper.A4),
                    .. MixingSheet.Draw(plan, Paper.A4),
                    .. StockLabels.Draw(plan, Paper.A4),
                    .. TankLog.Draw(plan, Paper.A4),
                ]
        );
        Assert.All(
            drafts,
            draft =>
                Assert.All(
                    SheetText.Of(draft.Elements),
                    text =>
                        Assert.True(
                            text.Bounds.X >= 0 && text.Bounds.Right <= draft.Paper.Width,
                            $"{draft.Title}: '{text.Text.Content}'"
                        )
                )
        );
    }

    [Fact]
    public void Plots_speak_the_language_of_the_reader_and_their_files_name_the_columns_alike_in_all()
    {
        var plan = BenchPlans.Demo(BenchPlans.FoodBank);
        var plain = ScreenPlot.All(plan);
        var pseudo = Pseudo(() => ScreenPlot.All(plan));
        foreach (var (here, there) in plain.Zip(pseudo))
        {
            Assert.StartsWith("⟦", there.Title, StringComparison.Ordinal);
            Assert.All(there.Numbers, number => Assert.StartsWith("⟦", number.What, StringComparison.Ordinal));
            Assert.All(there.Data.Columns, column => Assert.StartsWith("⟦", column.Heading, StringComparison.Ordinal));
            Assert.Equal(here.Key, there.Key);
            Assert.Equal(Encoding.UTF8.GetString(here.Csv()), Encoding.UTF8.GetString(there.Csv()));
        }
    }

    [Fact]
    public void What_a_part_of_a_drawing_is_called_when_read_out_comes_from_the_texts()
    {
        var plan = BenchPlans.Demo(BenchPlans.School);
        var parts = Pseudo(() => ScreenView.Parts(plan)).Where(part => part.Kind != "run").ToList();
        Assert.Contains(parts, part => part.Kind == "pot");
        Assert.All(parts, part => Assert.StartsWith("⟦", part.Label, StringComparison.Ordinal));
    }

    private static T Pseudo<T>(Func<T> make)
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("qps-ploc");
            return make();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    /// <summary>The words of names that come from the catalogue, the rig file, or the drawings' own labels.</summary>
    private static HashSet<string> KnownWords(Plan plan) =>
        [
            .. plan
                .Layout.Parts.Catalogue.All.Select(entry => entry.Name)
                .Concat(plan.Layout.Stand.Members.Select(member => member.Label))
                .Concat(plan.Parts.Lines.Select(line => line.Part))
                .Concat(
                    plan.Parts.Lines.Where(line => line.Name.Key.Length == 0).Select(line => $"{line.Name.Values[0]}")
                )
                .SelectMany(PlainWords),
        ];

    private static IEnumerable<string> PlainWords(string text) =>
        Word().Matches(text).Select(match => match.Value.ToLowerInvariant()).Where(word => !s_elsewhere.Contains(word));

    // The pseudo-language puts an accent on every vowel: a word with a bare one is not from the texts.
    [GeneratedRegex(@"(?<!\p{L})(?=\p{L}*[aeiou])[a-zA-Z]{3,}(?!\p{L})", RegexOptions.None, 1000)]
    private static partial Regex Word();
}
