using CsCheck;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Units;

public sealed class PhTextTests
{
    [Theory]
    [InlineData("6.4", 6.4)]
    [InlineData("6,4", 6.4)]
    [InlineData(" 5.85 ", 5.85)]
    [InlineData("7", 7)]
    [InlineData("0", 0)]
    [InlineData("14", 14)]
    public void A_pH_is_a_plain_number(string text, double ph) => Assert.Equal(ph, PhText.Read(text));

    [Theory]
    [InlineData("")]
    [InlineData("14.1")]
    [InlineData("-1")]
    [InlineData("6.4 pH")]
    [InlineData("6,4,1")]
    [InlineData("6.4,1")]
    [InlineData("NaN")]
    [InlineData("6e0")]
    public void What_is_no_pH_is_none(string text) => Assert.Null(PhText.Read(text));

    [Theory]
    [InlineData(6, "6.0")]
    [InlineData(5.8, "5.8")]
    [InlineData(5.85, "5.85")]
    [InlineData(5.849, "5.85")]
    public void It_is_printed_with_one_decimal_or_two(double ph, string text) => Assert.Equal(text, PhText.Print(ph));

    [Fact]
    public void What_a_meter_shows_is_read_back_as_printed() =>
        Gen.Int[0, 1400].Holds(hundredths => PhText.Read(PhText.Print(hundredths / 100.0)) == hundredths / 100.0);
}
