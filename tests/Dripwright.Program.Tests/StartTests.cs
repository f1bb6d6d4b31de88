using System.Text.Json;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class StartTests
{
    [Theory]
    [InlineData("us")]
    [InlineData("metric")]
    public async Task A_started_rig_file_has_no_faults(string units)
    {
        using var scratch = new Scratch();
        var made = await Call.Of("start", scratch.At("my.rig.json"), "--units", units, "--pots", "12");
        var checkedAgain = await Call.Of("check", scratch.At("my.rig.json"));

        Assert.Equal(Exit.Good, made.Exit);
        Assert.NotEqual(Exit.FaultyFile, checkedAgain.Exit);
        Assert.Empty(checkedAgain.Error);
        Assert.Equal(["my.rig.json"], scratch.Names);
    }

    [Fact]
    public async Task A_file_that_stands_there_is_replaced_only_when_asked()
    {
        using var scratch = new Scratch();
        var path = scratch.Write("my.rig.json", "mine");

        var refused = await Call.Of("start", path);
        Assert.Equal(Exit.NotWritten, refused.Exit);
        Assert.Equal("mine", await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));

        var replaced = await Call.Of("start", path, "--replace");
        Assert.Equal(Exit.Good, replaced.Exit);
        Assert.StartsWith(
            "{",
            await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        Assert.Equal(["my.rig.json"], scratch.Names);
    }

    [Fact]
    public async Task A_folder_that_is_not_there_gives_4()
    {
        using var scratch = new Scratch();
        var call = await Call.Of("start", scratch.At("none/my.rig.json"));

        Assert.Equal(Exit.NotWritten, call.Exit);
        Assert.Empty(scratch.Names);
    }

    [Fact]
    public async Task Nobody_is_asked_where_no_terminal_is()
    {
        var call = await Call.Of(new Setting { Input = "Tomato house\n" }, "start", "-");

        Assert.Empty(call.Error);
        Assert.Contains("\"My rig\"", call.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_person_at_a_terminal_is_asked_and_asked_again_when_the_answer_cannot_be()
    {
        // Name, units, rows, pots (first wrong), spacing (first wrong), staggered; then the end of input.
        var setting = new Setting
        {
            IsTerminal = true,
            Input = "Tomato house\nmetric\n2\nlots\n8\n40 yords\n40 cm\nyes\n",
        };
        var call = await Call.Of(setting, "start", "-");

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains("\"Tomato house\"", call.Out, StringComparison.Ordinal);
        Assert.Contains("\"staggered\"", call.Out, StringComparison.Ordinal);
        Assert.Contains("\"40 cm\"", call.Out, StringComparison.Ordinal);
        Assert.Contains("Found \"lots\"", call.Error, StringComparison.Ordinal);
        Assert.Contains("Found \"40 yords\"", call.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rows")]
    [InlineData("rows", "rig")]
    [InlineData("plantsPerPot", "brief")]
    [InlineData("pumps", "catalogue")]
    public async Task The_schema_of_each_file_is_printed_as_json(string field, params string[] kind)
    {
        var call = await Call.Of(["schema", .. kind]);

        Assert.Equal(Exit.Good, call.Exit);
        using var schema = JsonDocument.Parse(call.Out);
        Assert.True(schema.RootElement.GetProperty("properties").TryGetProperty(field, out _));
    }

    [Theory]
    [InlineData("pipes", "pvc40-1-1/2", "pump-400gph")]
    [InlineData("pumps", "pump-400gph", "pvc40-1-1/2")]
    public async Task One_shelf_can_be_listed_alone(string kind, string there, string elsewhere)
    {
        foreach (var args in new[] { new[] { "catalogue", kind }, ["catalogue", kind, "--json"] })
        {
            var call = await Call.Of(args);

            Assert.Equal(Exit.Good, call.Exit);
            Assert.Contains(there, call.Out, StringComparison.Ordinal);
            Assert.DoesNotContain(elsewhere, call.Out, StringComparison.Ordinal);
        }
    }
}
