using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Tests.Files;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Catalogue;

/// <summary>Files of parts, salts, targets and stages that nobody would write.</summary>
public sealed class CatalogueFuzzTests
{
    // A reading is clean when it has a catalogue or a fault, never both, and each fault says where and what.
    private static bool IsClean(byte[] bytes)
    {
        var reading = CatalogueReader.Read(bytes, "fuzz", PartsCatalogue.Default);
        return reading.Catalogue is null == reading.Faults.Count > 0
            && reading
                .Faults.Told()
                .All(fault =>
                    fault is { Line: > 0, Column: > 0, Found.Length: > 0, Expected.Length: > 0 }
                    && fault.ToString().Length < 1000
                )
            && reading.Faults.Count <= FaultList.Most + 1;
    }

    /// <summary>One row of ours of any group, in a file of its own: whole groups would be slow to try.</summary>
    private static readonly Gen<byte[]> s_rows = Gen.OneOf<string>([.. Rows()]).Select(Encoding.UTF8.GetBytes);

    private static IEnumerable<string> Rows()
    {
        foreach (var group in CatalogueData.Groups)
        {
            var lines = Encoding.UTF8.GetString(CatalogueData.Bytes(group)).Split('\n');
            var name = "";
            foreach (var line in lines)
            {
                var text = line.Trim().TrimEnd(',');
                if (text.EndsWith('['))
                {
                    name = text.Split('"')[1];
                }
                else if (text.StartsWith('{') && text.EndsWith('}'))
                {
                    yield return $$"""{ "{{name}}": [ {{text}} ] }""";
                }
            }
        }
    }

    [Fact]
    public void Every_row_of_ours_is_tried_and_reads_over_ours_without_a_fault()
    {
        var rows = Rows().ToList();
        var ours = PartsCatalogue.Default;
        Assert.Equal(
            ours.All.Count()
                + ours.Crops.Count
                + ours.Media.Count
                + ours.Salts.Salts.Count
                + ours.Targets.Targets.Count
                + ours.Targets.Stages.Count,
            rows.Count
        );
        Assert.All(rows, row => Assert.Empty(CatalogueReader.Read(Encoding.UTF8.GetBytes(row), "x", ours).Faults));
    }

    [Fact]
    public void Any_bytes_give_a_clean_reading() => Gen.Byte.Array[0, 200].Holds(IsClean, iter: 5_000);

    [Fact]
    public void Any_text_of_JSON_marks_and_our_words_gives_a_clean_reading() =>
        JsonMarks
            .With(
                "pumps",
                "salts",
                "targets",
                "stages",
                "key",
                "basedOn",
                "pump-400gph",
                "potassium-nitrate",
                "label",
                "n",
                "curve",
                "currency"
            )
            .Holds(IsClean, iter: 5_000);

    [Fact]
    public void A_row_with_bytes_changed_gives_a_clean_reading() =>
        Gen.Select(s_rows, Gen.Select(Gen.Int[0, 1_000_000], Gen.Byte).Array[1, 8])
            .Holds(
                (row, changes) =>
                {
                    var bytes = (byte[])row.Clone();
                    foreach (var (at, value) in changes)
                    {
                        bytes[at % bytes.Length] = value;
                    }
                    return IsClean(bytes);
                },
                iter: 3_000
            );

    [Fact]
    public void A_row_with_one_value_spoiled_is_told_where_it_is_spoiled() =>
        Gen.Select(
                s_rows,
                Gen.Int[0, 1_000_000],
                Gen.OneOf<string>(
                    "null",
                    "7",
                    "-1",
                    "1e99",
                    "true",
                    "\"\"",
                    "\"12 quux\"",
                    "[]",
                    "[7]",
                    "{}",
                    "{ \"x\": 1 }"
                )
            )
            .Holds(
                (row, at, spoiled) =>
                {
                    var file = System.Text.Json.Nodes.JsonNode.Parse(row)!.AsObject();
                    var (group, list) = file.First();
                    var fields = list![0]!.AsObject();
                    // The last field stays unspoiled: its row must be whole for the fault to be its value's alone.
                    var name = fields.Select(pair => pair.Key).ElementAt(at % fields.Count);
                    fields[name] = System.Text.Json.Nodes.JsonNode.Parse(spoiled);
                    var reading = CatalogueReader.Read(
                        Encoding.UTF8.GetBytes(file.ToJsonString()),
                        "fuzz",
                        PartsCatalogue.Default
                    );
                    return reading.Faults.All(fault =>
                        fault.Path.StartsWith($"{group}[0]", StringComparison.Ordinal) && fault.Line == 1
                    );
                },
                iter: 3_000
            );

    // Reading must grow with the length only: the whole suite would hang where one of these took more than its share.
    [Theory]
    [InlineData("[", "", "")]
    [InlineData("{},", "{\"pumps\":[", "]}")]
    [InlineData("{\"key\":\"a\"},", "{\"salts\":[", "]}")]
    [InlineData("\"pumps\":[],", "{", "}")]
    [InlineData("{\"flow\":1},", "{\"pumps\":[{\"key\":\"a\",\"curve\":[", "]}]}")]
    [InlineData("\"n\":1,", "{\"targets\":[{\"key\":\"a\",\"millimolesPerLitre\":{", "}}]}")]
    [InlineData("\"pvc-cemen\",", "{\"emitters\":[{\"key\":\"a\",\"pieces\":[", "]}]}")]
    [InlineData("(", "{\"salts\":[{\"key\":\"a\",\"formula\":\"", "\"}]}")]
    [InlineData("9", "{\"sundries\":[{\"key\":\"a\",\"price\":", "}]}")]
    public void A_mebibyte_of_nonsense_gives_a_clean_reading(string again, string before, string after)
    {
        var text = new StringBuilder(before);
        while (text.Length < FileTree.MaxBytes - 100)
        {
            text.Append(again);
        }
        Assert.True(IsClean(Encoding.UTF8.GetBytes(text.Append(after).ToString())));
    }
}
