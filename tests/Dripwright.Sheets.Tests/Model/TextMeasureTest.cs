using CsCheck;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Model;

public sealed class TextMeasureTest
{
    [Fact]
    public void Figures_are_all_equally_wide_in_both_weights()
    {
        foreach (var style in new[] { TextStyle.Body, TextStyle.Body.Bold })
        {
            Assert.Single("0123456789".Select(figure => TextMeasure.Width(figure.ToString(), style)).Distinct());
        }
    }

    [Fact]
    public void The_font_has_the_signs_a_drawing_needs() =>
        Assert.All(
            "½¼¾⅛⅜⅝⅞⁄⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉Ø⌀×°±≤≥→µΔ–—•☐−≈√\u00a0\u202f\u2009",
            sign => Assert.True(TextMeasure.CanWrite(sign.ToString()), $"{(int)sign:X4}")
        );

    [Fact]
    public void Wrapped_lines_fit_and_lose_nothing() =>
        Gen.Select(Gen.String[Gen.Char["abc xyzÄ½ "], 0, 200], Gen.Double[5, 80])
            .Holds(
                (text, width) =>
                {
                    var lines = TextMeasure.Wrap(text, width, TextStyle.Body);
                    Assert.All(lines, line => Assert.True(TextMeasure.Width(line, TextStyle.Body) <= width));
                    Assert.Equal(
                        text.Replace(" ", "", StringComparison.Ordinal),
                        string.Concat(lines).Replace(" ", "", StringComparison.Ordinal)
                    );
                }
            );

    [Fact]
    public void A_number_never_parts_from_its_unit() =>
        Assert.Equal(["a", "12\u00a0mm"], TextMeasure.Wrap("a 12\u00a0mm", 12, TextStyle.Body));

    [Fact]
    public void A_shortened_text_fits() =>
        Assert.True(
            TextMeasure.Width(TextMeasure.Shorten("A very long name", 15, TextStyle.Body), TextStyle.Body) <= 15
        );

    [Fact]
    public void Styles_and_papers_can_be_put_into_words()
    {
        Assert.Equal("A4 210 × 297 mm", Paper.A4.ToString());
        Assert.Contains("3.9 mm", new Text("a", new(1, 2), TextStyle.Body).ToString(), StringComparison.Ordinal);
    }
}
