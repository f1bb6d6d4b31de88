using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Tests.Views;

public sealed class SheetNotesTests
{
    private static readonly Box s_strip = new(20, 150, 247, SheetNotes.Height);

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(7)]
    public void No_note_is_left_out_however_many_words_there_are(int count)
    {
        string[] notes =
        [
            .. Enumerable.Range(1, count).Select(n => $"Note{n} says that the row is measured from its left end."),
        ];
        LegendEntry[] legend =
        [
            .. Enumerable.Range(1, 5).Select(n => new LegendEntry($"line of kind {n}, with water in it", Pen.Water)),
        ];

        var texts = SheetText.Of([.. SheetNotes.Told(s_strip, s_strip.X + 94, legend, notes)]).ToList();

        var said = string.Join(' ', texts.Select(text => text.Text.Content));
        Assert.All(notes, note => Assert.Contains(note, said, StringComparison.Ordinal));
        Assert.All(legend, entry => Assert.Contains(entry.Words, said, StringComparison.Ordinal));
        Assert.All(texts, text => Assert.True(text.Bounds.Right <= s_strip.Right + 0.1, text.Text.Content));
        Assert.All(texts, text => Assert.InRange(text.Bounds.Bottom, s_strip.Y, s_strip.Bottom + 1));
    }

    [Fact]
    public void Few_words_keep_the_size_of_a_note()
    {
        var texts = SheetText.Of([.. SheetNotes.Told(s_strip, s_strip.X + 94, [], ["Short."])]);
        Assert.Equal(TextStyle.Note.Size, Assert.Single(texts).Text.Style.Size);
    }
}
