using System.Globalization;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;
using UglyToad.PdfPig;

namespace Dripwright.Sheets.Tests.Writing;

public sealed class PdfWriterTest
{
    [Fact]
    public void A_line_of_100_mm_reads_back_as_100_mm()
    {
        using var pdf = Read(Samples.OneOfEach());
        var page = pdf.GetPage(1);
        var widths = page.Paths.Select(path => path.GetBoundingRectangle()?.Width ?? 0).ToList();
        Assert.Contains(widths, width => Math.Abs(width - 283.4646) < 0.01);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    [InlineData("Letter")]
    [InlineData("Tabloid")]
    public void The_page_box_is_the_paper_within_a_tenth_of_a_millimetre(string name)
    {
        var upright = new[] { Paper.A4, Paper.A3, Paper.Letter, Paper.Tabloid }.Single(paper => paper.Name == name);
        foreach (var paper in new[] { upright, upright.Landscape })
        {
            using var pdf = Read(Samples.OneOfEach(paper));
            var page = pdf.GetPage(1);
            Assert.Equal(paper.Width, page.Width * 25.4 / 72, 0.1);
            Assert.Equal(paper.Height, page.Height * 25.4 / 72, 0.1);
        }
    }

    [Fact]
    public void Text_can_be_read_back_with_fractions_and_its_font_is_embedded()
    {
        using var pdf = Read(Samples.OneOfEach());
        var page = pdf.GetPage(1);
        Assert.Contains("1 ¹¹⁄₁₆ in, Ø 19 × 1.2 m², 5 ½ ° <&>", page.Text, StringComparison.Ordinal);
        var fonts = page.Letters.Select(letter => letter.FontName).Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.Equal(2, fonts.Count);
        Assert.All(fonts, font => Assert.Contains("DripwrightSans", font, StringComparison.Ordinal));
        Assert.Equal("Sample", pdf.Information.Title);
    }

    [Fact]
    public void A_text_is_as_wide_in_the_file_as_it_was_measured()
    {
        const string words = "Drill Ø 19 at 1 234.5 mm";
        using var pdf = Read(new(Paper.A4, "Width", [new Text(words, new(30, 50), TextStyle.Body)]));
        var letters = pdf.GetPage(1).Letters;
        var width = (letters[^1].EndBaseLine.X - letters[0].StartBaseLine.X) * 25.4 / 72;
        Assert.Equal(TextMeasure.Width(words, TextStyle.Body), width, 0.05);
    }

    [Fact]
    public void The_same_sheets_give_the_same_bytes_in_every_culture()
    {
        var first = PdfWriter.Write([Samples.OneOfEach()], "Sample");
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, PdfWriter.Write([Samples.OneOfEach()], "Sample"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Several_threads_may_write_at_once()
    {
        var first = PdfWriter.Write([Samples.OneOfEach()], "Sample");
        Parallel.For(0, 16, _ => Assert.Equal(first, PdfWriter.Write([Samples.OneOfEach()], "Sample")));
    }

    [Fact]
    public void Twenty_sheets_stay_small()
    {
        var sheets = Enumerable.Range(0, 20).Select(_ => Samples.OneOfEach()).ToList();
        Assert.InRange(PdfWriter.Write(sheets, "Sample").Length, 1_000, 300_000);
    }

    [Fact]
    public void A_file_without_sheets_is_refused() =>
        Assert.Throws<ArgumentException>(() => PdfWriter.Write([], "Sample"));

    private static PdfDocument Read(Sheet sheet) => PdfDocument.Open(PdfWriter.Write([sheet], "Sample"));
}
