using System.Security.Cryptography;
using System.Text;

namespace Dripwright.Pack.Tests;

/// <summary>The list by which a pack's own files are told from everything else.</summary>
public sealed class PackListTests
{
    private static readonly KeyValuePair<string, byte[]>[] s_files =
    [
        new("plan.json", "{}"u8.ToArray()),
        new("build-pack.pdf", "%PDF"u8.ToArray()),
        new("sheets/01-cover.svg", "<svg/>"u8.ToArray()),
    ];

    public static TheoryData<string> NamesThatLeave =>
        [
            "../x",
            "a/../../x",
            "/etc/passwd",
            "a//b",
            "a/",
            ".",
            "..",
            ".hidden",
            "a/.b",
            "a\\b",
            "C:x",
            "a b",
            "x.",
            "",
            "ä",
            "a\nb",
            "a\0b",
        ];

    [Fact]
    public void The_list_names_every_file_with_its_length_and_checksum_in_the_order_of_the_names()
    {
        var list = PackList.Of(s_files);

        Assert.Equal(["build-pack.pdf", "plan.json", "sheets/01-cover.svg"], list.Files.Select(file => file.Name));
        Assert.Equal([4L, 2L, 6L], list.Files.Select(file => file.Bytes));
        Assert.Equal(
            // SHA-256 of the two bytes "{}", as any checksum tool prints it.
            "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a",
            list.Files[1].Sha256
        );
        Assert.Equal(["sheets"], list.Folders);
    }

    [Fact]
    public void A_list_read_back_is_the_same_list_and_gives_the_same_bytes()
    {
        var bytes = PackList.Of(s_files).ToBytes();

        var (list, fault) = PackList.Read(bytes);

        Assert.Null(fault);
        Assert.Equal(PackList.Of(s_files).Files, list!.Files);
        Assert.Equal(bytes, list.ToBytes());
        Assert.Equal(bytes, PackList.Of(s_files.Reverse()).ToBytes());
    }

    [Fact]
    public void No_byte_of_a_list_can_be_changed_left_out_or_doubled_without_the_list_being_refused()
    {
        var bytes = PackList.Of(s_files).ToBytes();
        for (var i = 0; i < bytes.Length; i++)
        {
            byte[] other = [.. bytes];
            other[i] ^= 0x01;
            AssertRefused(other);
            AssertRefused([.. bytes[..i], .. bytes[(i + 1)..]]);
            AssertRefused([.. bytes[..i], bytes[i], .. bytes[i..]]);
            AssertRefused(bytes[..i]);
        }

        AssertRefused([.. bytes, (byte)' ']);
    }

    [Theory]
    [MemberData(nameof(NamesThatLeave))]
    public void A_name_that_leaves_the_pack_is_refused_though_the_checksum_fits(string name)
    {
        Assert.Throws<ArgumentException>(() => PackList.Of([.. s_files, new(name, [1])]));
        // What a forger writes: the right form and a right checksum over the wrong name.
        var forged = PackListText.Write([new(name, 1, Convert.ToHexStringLower(SHA256.HashData([1])))]);

        var (list, fault) = PackList.Read(Encoding.UTF8.GetBytes(forged));

        Assert.Null(list);
        Assert.NotNull(fault);
    }

    [Theory]
    [InlineData("Plan.json")]
    [InlineData("plan.json/a")]
    [InlineData("Pack-List.json")]
    [InlineData("sheets")]
    public void One_name_cannot_stand_for_two_things(string name) =>
        Assert.Throws<ArgumentException>(() => PackList.Of([.. s_files, new(name, [1])]));

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("""{ "format": 1 }""")]
    [InlineData("""{ "format": "1", "files": [] }""")]
    [InlineData("""{ "format": 99999999999, "files": [] }""")]
    [InlineData("""{ "format": 1, "files": [{}] }""")]
    [InlineData("""{ "format": 1, "files": [{ "name": 1, "bytes": "x", "sha256": [] }] }""")]
    public void What_is_no_list_is_told_so(string text) => AssertRefused(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void A_list_of_a_later_format_says_which()
    {
        var later = Encoding
            .UTF8.GetString(PackList.Of(s_files).ToBytes())
            .Replace("\"format\": 1", "\"format\": 2", StringComparison.Ordinal);

        var (_, fault) = PackList.Read(Encoding.UTF8.GetBytes(later));

        Assert.Equal("found format 2; expected 1: another version of the program wrote it", fault);
    }

    private static void AssertRefused(byte[] bytes)
    {
        var (list, fault) = PackList.Read(bytes);
        Assert.Null(list);
        Assert.False(string.IsNullOrWhiteSpace(fault));
    }
}
