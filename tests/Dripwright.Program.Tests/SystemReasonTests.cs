using Dripwright.Language;

namespace Dripwright.Program.Tests;

/// <summary>What an operating system refuses is told in our words, with the way out, and the system's text behind.</summary>
public sealed class SystemReasonTests
{
    [Theory]
    [InlineData(28, "system.full")]
    [InlineData(122, "system.full")]
    [InlineData(unchecked((int)0x80070070), "system.full")]
    [InlineData(30, "system.read-only")]
    [InlineData(unchecked((int)0x80070013), "system.read-only")]
    [InlineData(11, "system.in-use")]
    [InlineData(unchecked((int)0x80070020), "system.in-use")]
    [InlineData(5, "system.device")]
    public void A_number_of_the_system_has_words_of_ours(int number, string key) =>
        Assert.Equal(Both(key, "as it says"), SystemReason.Of(new IOException("as it says", number)));

    [Fact]
    public void A_number_that_is_none_of_the_common_ones_is_told_as_the_system_says_it_in_one_line() =>
        Assert.Equal("as it says", SystemReason.Of(new IOException("as\nit says\n", 9999)));

    [Fact]
    public void A_disk_that_is_full_says_so()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "Only where the system has a device that is always full.");
        var wrong = Assert.ThrowsAny<IOException>(() =>
        {
            using var full = new FileStream("/dev/full", FileMode.Open, FileAccess.Write, FileShare.ReadWrite, 0);
            full.Write([1]);
        });
        Assert.Equal(Both("system.full", wrong.Message), SystemReason.Of(wrong));
    }

    [Fact]
    public void A_file_that_is_not_there_a_missing_folder_one_that_another_holds_and_one_that_is_a_folder_are_told_apart()
    {
        using var scratch = new Scratch();
        var file = scratch.At("one");
        using var held = new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        Assert.StartsWith(Words.Of("system.no-file"), Told(scratch.At("none")), StringComparison.Ordinal);
        Assert.StartsWith(Words.Of("system.no-folder"), Told(scratch.At("none/none")), StringComparison.Ordinal);
        Assert.StartsWith(Words.Of("system.in-use"), Told(file), StringComparison.Ordinal);
        Assert.StartsWith(Words.Of("system.no-access"), Told(Path.GetDirectoryName(file)!), StringComparison.Ordinal);
    }

    private static string Told(string path) =>
        SystemReason.Of(
            Assert.ThrowsAny<Exception>(() => new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        );

    private static string Both(string key, string said) => Words.Of("system.said", Words.Of(key), said);
}
