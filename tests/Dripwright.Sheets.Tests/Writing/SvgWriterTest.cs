using System.Globalization;
using System.Xml.Linq;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;

namespace Dripwright.Sheets.Tests.Writing;

public sealed class SvgWriterTest
{
    [Fact]
    public void Every_element_is_written_as_before() =>
        CommittedText.IsGolden("one-of-each.svg", SvgWriter.Write(Samples.OneOfEach()));

    [Fact]
    public void The_file_is_the_same_in_every_culture()
    {
        var first = SvgWriter.Write(Samples.OneOfEach());
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, SvgWriter.Write(Samples.OneOfEach()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_size_is_the_paper_in_millimetres()
    {
        var root = XDocument.Parse(SvgWriter.Write(Samples.OneOfEach(Paper.Letter))).Root!;
        Assert.Equal("215.9mm", root.Attribute("width")!.Value);
        Assert.Equal("0 0 215.9 279.4", root.Attribute("viewBox")!.Value);
    }

    [Fact]
    public void Forbidden_characters_and_markup_do_not_break_the_file()
    {
        var words = "a<b>&\"c\u0001\u0000\uFFFF\ud800 d\te";
        var svg = SvgWriter.Write(new(Paper.A4, words, [new Text(words, new(1, 1), TextStyle.Body)]));
        var text = XDocument.Parse(svg).Descendants().Single(element => element.Name.LocalName == "text");
        Assert.Equal("a<b>&\"c\uFFFD\uFFFD\uFFFD\uFFFD d e", text.Value);
    }

    [Fact]
    public void A_page_gets_no_size_no_styles_and_its_own_ids()
    {
        var svg = SvgWriter.Write(Samples.OneOfEach(), SvgOptions.Inline with { IdPrefix = "s1-" });
        Assert.DoesNotContain("<style", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("mm\"", svg, StringComparison.Ordinal);
        Assert.Contains("id=\"s1-pot-1\"", svg, StringComparison.Ordinal);
        Assert.Contains("url(#s1-hatch-explain)", svg, StringComparison.Ordinal);
        Assert.Contains("--sheet-water", SvgWriter.PageStyles(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_coordinate_that_is_no_number_is_refused()
    {
        var sheet = new Sheet(Paper.A4, "Bad", [new Line(new(double.NaN, 0), new(1, 1), Pen.Built)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => SvgWriter.Write(sheet));
        Assert.Throws<ArgumentOutOfRangeException>(() => PdfWriter.Write([sheet], "Bad"));
    }
}
