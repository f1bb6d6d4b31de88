using System.Text.Json;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class SuggestTests
{
    private const string Brief = """
        { "name": "Three pots", "site": { "roomLength": "12 ft", "roomWidth": "5 ft" },
          "crops": [{ "crop": "basil", "plants": 3 }], "leastEmitters": 4 } // a small one
        """;

    [Fact]
    public async Task Rigs_are_told_within_eighty_columns_and_their_files_pass_check()
    {
        using var scratch = new Scratch();
        var folder = scratch.At("rigs");
        var call = await Call.Of("suggest", scratch.Write("b.json", Brief), "--into", folder);

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Empty(call.Error);
        Assert.Contains("The cheapest that passes every rule.", call.Out, StringComparison.Ordinal);
        Assert.All(call.Out.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        var files = Directory.GetFiles(folder);
        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            var check = await Call.Of("check", file);
            Assert.Equal(Exit.Good, check.Exit);
            Assert.DoesNotContain("STOP", check.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("MEND", check.Out, StringComparison.Ordinal);
        }

        // A second call must not overwrite what may have been edited since.
        Assert.Equal(Exit.NotWritten, (await Call.Of("suggest", scratch.At("b.json"), "--into", folder)).Exit);
    }

    [Fact]
    public async Task The_answer_as_json_parses_and_holds_the_rigs()
    {
        var call = await Call.Of(new Setting { Input = Brief }, "suggest", "-", "--json");

        Assert.Equal(Exit.Good, call.Exit);
        using var answer = JsonDocument.Parse(call.Out);
        Assert.All(
            answer.RootElement.GetProperty("proposals").EnumerateArray(),
            p => Assert.Equal(1, p.GetProperty("rig").GetProperty("format").GetInt32())
        );
        Assert.True(answer.RootElement.GetProperty("search").GetProperty("complete").GetBoolean());
    }

    [Fact]
    public async Task A_faulty_brief_gives_2_and_says_where()
    {
        var call = await Call.Of(new Setting { Input = """{ "crops": [{ "plant": 3 }] }""" }, "suggest", "-");

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Empty(call.Out);
        Assert.Contains("plants", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_impossible_brief_gives_3_and_says_what_would_help()
    {
        var brief = """{ "crops": [{ "plants": 500 }] }""";
        var call = await Call.Of(new Setting { Input = brief }, "suggest", "-");

        Assert.Equal(Exit.RigWouldFail, call.Exit);
        Assert.Contains("holds at most", call.Out, StringComparison.Ordinal);
        Assert.Contains("→", call.Out, StringComparison.Ordinal);
    }
}
