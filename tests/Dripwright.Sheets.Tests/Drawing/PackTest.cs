using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Writing;
using UglyToad.PdfPig;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class PackTest
{
    [Theory]
    [InlineData(0, "side-view.svg")]
    [InlineData(1, "full-size.svg")]
    [InlineData(2, "steps.svg")]
    [InlineData(4, "cut-list.svg")]
    [InlineData(6, "plots.svg")]
    public void The_sheets_look_as_they_were_accepted(int sheet, string name) =>
        CommittedText.IsGolden(name, SvgWriter.Write(DemoPack.Sheets()[sheet], SvgOptions.Inline));

    [Fact]
    public void No_text_leaves_the_frame_and_none_is_cut_from_the_file()
    {
        foreach (var paper in new[] { Paper.A4, Paper.Letter, Paper.A3, Paper.Tabloid })
        {
            Assert.All(DemoPack.Sheets(paper), FlowTest.AssertInside);
        }
    }

    [Fact]
    public void The_example_of_the_readme_runs()
    {
        var (sheets, pdf, texts) = ReadmeExample.Run();
        Assert.Equal(4, sheets.Count);
        Assert.All(sheets, FlowTest.AssertInside);
        Assert.NotEmpty(pdf);
        Assert.All(texts, Assert.NotEmpty);
    }

    [Fact]
    public void Sheets_are_numbered_and_named_in_the_title_block()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write(DemoPack.Sheets(), "Demo"));
        Assert.Equal(7, pdf.NumberOfPages);
        Assert.Contains("3 of 7", pdf.GetPage(3).Text, StringComparison.Ordinal);
        Assert.Contains("Row 1, twelve pots", pdf.GetPage(3).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Long_names_are_shortened_inside_their_cell()
    {
        var name = string.Concat(Enumerable.Repeat("Very long name ", 20));
        var set = new SheetSet(name, name, name, name, name);
        FlowTest.AssertInside(set.Finish([new(Paper.A4, name, [])])[0]);
    }

    [Fact]
    public void The_pack_has_no_pen_or_colour_outside_the_palette()
    {
        foreach (var palette in new[] { Palette.Light, Palette.Dark, Palette.Print })
        {
            Assert.Equal(Enum.GetValues<DrawnRole>().Order(), palette.Colours.Keys.Order());
            Assert.Equal(Enum.GetValues<DrawnRole>().Order(), palette.Tints.Keys.Order());
        }
    }

    [Fact]
    public void The_rulers_read_back_as_100_mm_and_4_in_both_ways()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write(DemoPack.Sheets(), "Demo"));
        var boxes = pdf.GetPage(2)
            .Paths.Select(path => path.GetBoundingRectangle())
            .OfType<UglyToad.PdfPig.Core.PdfRectangle>()
            .ToList();
        foreach (var points in new[] { 283.4646, 288.0 })
        {
            Assert.Contains(boxes, box => Math.Abs(box.Width - points) < 0.01 && box.Height < 1);
            Assert.Contains(boxes, box => Math.Abs(box.Height - points) < 0.01 && box.Width < 1);
        }
    }
}
