using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Files;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Rigs;

public sealed class RigFuzzTests
{
    private static readonly PartsCatalogue s_parts = PartsCatalogue.Default;

    // A reading is clean when it has a rig or a fault, never both, and each fault says where and what.
    private static bool IsClean(byte[] bytes)
    {
        var reading = RigReader.Read(bytes, "fuzz", s_parts);
        return reading.Rig is null == reading.Faults.Count > 0
            && reading
                .Faults.Told()
                .All(fault =>
                    fault is { Line: > 0, Column: > 0, Found.Length: > 0, Expected.Length: > 0 }
                    && fault.ToString().Length < 1000
                )
            && reading.Faults.Count <= FaultList.Most + 1;
    }

    [Fact]
    public void Any_bytes_give_a_clean_reading() => Gen.Byte.Array[0, 200].Holds(IsClean, iter: 20_000);

    [Fact]
    public void Any_text_of_JSON_marks_gives_a_clean_reading() =>
        JsonMarks.With("rows", "pots").Holds(IsClean, iter: 20_000);

    [Fact]
    public void A_valid_file_with_bytes_changed_gives_a_clean_reading() =>
        Gen.Select(RigGen.Rigs, Gen.Select(Gen.Int[0, 1_000_000], Gen.Byte).Array[1, 8])
            .Holds(
                (rig, changes) =>
                {
                    var bytes = Encoding.UTF8.GetBytes(RigWriter.Write(rig));
                    foreach (var (at, value) in changes)
                    {
                        bytes[at % bytes.Length] = value;
                    }
                    return IsClean(bytes);
                },
                iter: 300
            );

    [Fact]
    public void A_valid_file_cut_off_anywhere_gives_a_clean_reading() =>
        Gen.Select(RigGen.Rigs, Gen.Double.Unit)
            .Holds(
                (rig, share) =>
                {
                    var bytes = Encoding.UTF8.GetBytes(RigWriter.Write(rig));
                    return IsClean(bytes[..(int)(share * bytes.Length)]);
                },
                iter: 200
            );

    // The whole suite would hang where one of these took more than its share: reading must grow with the length only.
    [Theory]
    [InlineData("[", "", "")]
    [InlineData("{\"rows\":", "", "")]
    [InlineData("{\"a\":1,", "", "")]
    [InlineData("\"rows\":[],", "{", "}")]
    [InlineData("{},", "{\"rows\":[", "]}")]
    [InlineData("{\"part\":\"pvc40-11/2\"},", "{\"onHand\":[", "]}")]
    [InlineData("1", "{\"format\":", "}")]
    [InlineData("9", "{\"rows\":[{\"pots\":1e", "}]}")]
    [InlineData("1 ", "{\"rows\":[{\"spacing\":\"", "\"}]}")]
    [InlineData("1,", "{\"rows\":[{\"planting\":[{\"pots\":\"", "\"}]}]}")]
    [InlineData("// x\n", "", "{}")]
    [InlineData(" ", "", "")]
    [InlineData("\u0001", "", "")]
    public void A_mebibyte_of_nonsense_gives_a_clean_reading(string again, string before, string after)
    {
        var text = new StringBuilder(before);
        while (text.Length < FileTree.MaxBytes - 100)
        {
            text.Append(again);
        }
        Assert.True(IsClean(Encoding.UTF8.GetBytes(text.Append(after).ToString())));
    }

    [Fact]
    public void Unknown_fields_by_the_ten_thousand_are_counted_not_listed()
    {
        var fields = Enumerable.Range(0, 90_000).Select(i => FormattableString.Invariant($"\"r{i}\":1"));
        var reading = RigReader.Read("{" + string.Join(',', fields) + "}", "fuzz", s_parts);
        Assert.Equal("89000 more faults", reading.Faults[^1].Found.Told());
    }

    [Fact]
    public void Plantings_by_the_ten_thousand_give_a_clean_reading()
    {
        // Each entry names all 5,000 pots of its row: judged one by one they would keep the reader busy for half a minute.
        var entries = string.Join(',', Enumerable.Repeat("""{"pots":"1-5000"}""", 480));
        var rows = string.Join(',', Enumerable.Repeat($$"""{"pots":5000,"planting":[{{entries}}]}""", 100));
        Assert.True(IsClean(Encoding.UTF8.GetBytes($$"""{"rows":[{{rows}}]}""")));
    }

    [Fact]
    public void A_file_of_over_a_mebibyte_is_refused_unread() =>
        Assert.Contains(
            "1 MiB",
            RigReader.Read(new byte[FileTree.MaxBytes + 1], "fuzz", s_parts).Faults.Single().Found.Told(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Broken_UTF_8_is_told_with_its_place()
    {
        byte[] bytes = [.. "{\n \"näme"u8, 0xC3, .. "\": 1 }"u8];
        var fault = RigReader.Read(bytes, "fuzz", s_parts).Faults.Single();
        Assert.Equal((2, 7), (fault.Line, fault.Column));
        Assert.Contains("UTF-8", fault.Expected.Told(), StringComparison.Ordinal);
    }
}
