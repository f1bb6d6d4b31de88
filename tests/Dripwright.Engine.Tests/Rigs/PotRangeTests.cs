using CsCheck;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class PotRangeTests
{
    [Theory]
    [InlineData("3", new[] { 3 })]
    [InlineData("1-3", new[] { 1, 2, 3 })]
    [InlineData("9, 1-2", new[] { 1, 2, 9 })]
    [InlineData(" 2 – 3 ", new[] { 2, 3 })]
    [InlineData("4-4", new[] { 4 })]
    [InlineData("All", new[] { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 })]
    public void Ranges_name_pots(string text, int[] pots) => Assert.Equal(pots, PotRange.Parse(text, 10));

    [Theory]
    [InlineData("", "pots such as")]
    [InlineData("1,", "pots such as")]
    [InlineData("1-2-3", "pots such as")]
    [InlineData("-1", "pots such as")]
    [InlineData("one", "pots such as")]
    [InlineData("99999999999", "pots such as")]
    [InlineData("0", "from 1 to 10")]
    [InlineData("11", "from 1 to 10")]
    [InlineData("3-2", "the lower number first")]
    [InlineData("1-4, 3", "3 is named twice")]
    public void Wrong_ranges_say_what_was_expected(string text, string expected)
    {
        Assert.False(PotRange.TryParse(text, 10, out var named, out var said));
        Assert.Empty(named);
        Assert.Contains(expected, said.Told(), StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => PotRange.Parse(text, 10));
    }

    [Fact]
    public void Any_text_is_read_or_refused() =>
        Gen.String[Gen.Char["0123456789,- al"], 0, 12]
            .Holds(text =>
                PotRange.TryParse(text, 50, out var named, out var expected)
                    ? named.Count > 0
                    : expected.Told().Length > 0
            );
}
