using System.Text;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class PrintPartsTests
{
    [Fact]
    public async Task Every_part_of_the_stand_is_written_with_the_coupon_and_a_list()
    {
        using var scratch = new Scratch();
        scratch.Write("a.rig.json", """{ "rows": [ { "pots": 10 } ] }""");

        var call = await Call.Of("print-parts", scratch.At("a.rig.json"), "--into", scratch.At("parts"));

        Assert.Equal(Exit.Good, call.Exit);
        string[] names =
        [
            .. Directory.GetFiles(scratch.At("parts")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal),
        ];
        Assert.Contains("X1.stl", names);
        Assert.Contains("U1.3mf", names);
        Assert.Contains("printed-parts.csv", names);
        Assert.Equal(
            names.Count(n => n.EndsWith(".stl", StringComparison.Ordinal)),
            names.Count(n => n.EndsWith(".3mf", StringComparison.Ordinal))
        );
        // Five frames of two legs: ten feet.
        Assert.Contains(
            "\"U1\",\"10\",",
            Encoding.UTF8.GetString(File.ReadAllBytes(scratch.At("parts/printed-parts.csv"))),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Small_parts_are_written_where_the_rig_file_asks_for_them_and_the_others_are_named()
    {
        using var scratch = new Scratch();
        scratch.Write(
            "a.rig.json",
            """{ "rows": [ { "pots": 4, "standHeight": "0 in" } ], "printing": { "smallParts": { "hoseClamp": true } } }"""
        );

        var call = await Call.Of("print-parts", scratch.At("a.rig.json"), "--into", scratch.At("parts"));

        Assert.Equal(Exit.Good, call.Exit);
        Assert.True(File.Exists(scratch.At("parts/M2.3mf")));
        // Two halves; no coupon, for no tube is there to try in it.
        var list = Encoding.UTF8.GetString(File.ReadAllBytes(scratch.At("parts/printed-parts.csv")));
        Assert.Contains("\"M2\",\"2\",", list, StringComparison.Ordinal);
        Assert.DoesNotContain("X1", list + call.Out, StringComparison.Ordinal);
        Assert.Contains("lineRests, stakeHolders, drillGuides", call.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rig_without_a_stand_has_nothing_to_print_and_leaves_no_folder()
    {
        using var scratch = new Scratch();
        scratch.Write("a.rig.json", """{ "rows": [ { "standHeight": "0 in" } ] }""");

        var call = await Call.Of("print-parts", scratch.At("a.rig.json"), "--into", scratch.At("parts"));

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.False(Directory.Exists(scratch.At("parts")));
    }
}
