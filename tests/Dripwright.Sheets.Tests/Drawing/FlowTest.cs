using System.Globalization;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class FlowTest
{
    private static readonly string s_longWord = new('W', 400);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(500)]
    public void A_table_of_any_length_keeps_every_row_once_and_its_header_on_each_sheet(int rows)
    {
        var table = new Table(new("Part"), new("Length", Align.Decimal), new("Done", Align.Tick));
        for (var i = 0; i < rows; i++)
        {
            table.Row("part " + i.ToString(CultureInfo.InvariantCulture), "12.5 mm");
        }

        var sheets = DemoPack.Set.Finish(TableSheet.Build(Paper.A4, "List", table));
        var texts = sheets.Select(sheet => SheetText.Of(sheet).Select(t => t.Text.Content).ToList()).ToList();
        Assert.All(texts, page => Assert.Single(page, "Length"));
        var parts = texts.SelectMany(page => page).Where(text => text.StartsWith("part ", StringComparison.Ordinal));
        Assert.Equal(Enumerable.Range(0, rows).Select(i => $"part {i.ToString(CultureInfo.InvariantCulture)}"), parts);
        Assert.All(sheets, AssertInside);
        Assert.Equal(rows == 500, sheets.Count > 10);
    }

    [Fact]
    public void Very_long_words_and_cells_stay_inside_the_frame()
    {
        var table = new Table(new(s_longWord), new("Length", Align.Decimal), new(s_longWord, Align.Tick), new("Note"))
            .Group(s_longWord)
            .Row(s_longWord, s_longWord, "", string.Join(' ', Enumerable.Repeat(s_longWord, 60)))
            .Row("short", "12.5 " + s_longWord);
        var drafts = new Flow(Paper.Letter, s_longWord)
            .Heading(s_longWord)
            .Paragraph(s_longWord + " " + s_longWord)
            .Bullet(s_longWord)
            .Step(s_longWord, caution: s_longWord)
            .FormLine(s_longWord, "L/h")
            .Table(table)
            .Build();
        Assert.All(DemoPack.Set.Finish(drafts), AssertInside);
    }

    [Fact]
    public void Numbers_stand_on_their_decimal_point()
    {
        var table = new Table(new("Part"), new("Length", Align.Decimal)).Row("a", "1200 mm").Row("b", "12.5 mm");
        var texts = SheetText.Of([table.Draw(new(20, 20), 100)]);
        var whole = texts.Single(t => t.Text.Content == "1200").Bounds;
        var broken = texts.Single(t => t.Text.Content == "12.5").Bounds;
        Assert.Equal(whole.Right, broken.X + TextMeasure.Width("12", TextStyle.Note with { Size = 3.4 }), 1e-6);
        Assert.Equal(2, texts.Count(t => t.Text.Content == "mm" && t.Text.Style.Size < 3));
    }

    [Fact]
    public void A_heading_stays_with_what_follows_and_a_caution_with_its_step()
    {
        // Every filling from none to a full sheet, so that each breaks somewhere else.
        for (var fill = 0; fill < 60; fill++)
        {
            var flow = new Flow(Paper.A4, "Steps").Space(fill * 4);
            var drafts = flow.Heading("Heading").Step("Do it.", caution: "Beware.").Build();
            Assert.Single(drafts, draft => Says(draft, "Heading") && Says(draft, "Beware.") && Says(draft, "Do it."));
        }
    }

    [Fact]
    public void A_long_text_breaks_over_sheets_without_losing_a_word()
    {
        var words = Enumerable.Range(0, 3000).Select(i => "w" + i.ToString(CultureInfo.InvariantCulture)).ToList();
        var drafts = new Flow(Paper.A4, "Long").Paragraph(string.Join(' ', words)).Build();
        Assert.True(drafts.Count > 2);
        var read = drafts.SelectMany(d => SheetText.Of(d.Elements)).SelectMany(t => t.Text.Content.Split(' '));
        Assert.Equal(words, read);
    }

    [Fact]
    public void A_row_with_too_many_cells_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Table(new Column("one")).Row("1", "2"));

    internal static void AssertInside(Sheet sheet)
    {
        foreach (var text in SheetText.Of(sheet))
        {
            Assert.True(sheet.Paper.Frame.Holds(text.Bounds, 0.01), $"'{text.Text.Content}' at {text.Bounds}");
        }
    }

    private static bool Says(SheetDraft draft, string words) =>
        SheetText.Of(draft.Elements).Any(text => text.Text.Content == words);
}
