using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

public sealed class CallTests
{
    internal static readonly string[] Commands =
    [
        "open",
        "start",
        "suggest",
        "check",
        "cures",
        "make-it-work",
        "plan",
        "pack",
        "mix",
        "adjust-tank",
        "uptake",
        "weeks-ahead",
        "print-parts",
        "schema",
        "catalogue",
        "backup",
        "restore",
        "export",
        "import",
        "empty-bin",
        "people",
        "make-certificate",
        "renew-certificate",
        "certificate",
    ];

    [Fact]
    public async Task A_call_without_a_word_shows_help_with_every_command()
    {
        var call = await Call.Of();

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Empty(call.Error);
        foreach (var command in Commands)
        {
            Assert.Matches($@"(?m)^  {command}\b", call.Out);
        }
    }

    [Fact]
    public async Task Help_says_things_in_the_words_that_everybody_uses()
    {
        foreach (var command in Commands)
        {
            var help = (await Call.Of(command, "--help")).Out;

            Assert.DoesNotMatch(
                @"(?i)\b(shelf|shelves|shape|pen|cans|(?<!--)keep|kept by|hand(ed)? out|take in|taken in|bring back|draws|reckon|let out|stands there)\b",
                help
            );
        }
    }

    [Fact]
    public async Task Help_fits_into_eighty_columns()
    {
        foreach (var command in Commands)
        {
            var call = await Call.Of(command, "--help");

            Assert.Equal(Exit.Good, call.Exit);
            Assert.All(call.Out.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 80));
        }
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("plan", "one.json", "two.json")]
    [InlineData("plan", "one.json", "--jsno")]
    [InlineData("plan", "--jsno", "one.json")]
    [InlineData("pln", "one.json")]
    [InlineData("pack", "one.json")]
    [InlineData("pack", "one.json", "-o", "x", "--paper", "a5")]
    [InlineData("pack", "one.json", "-o", "x", "--date", "1.3.2026")]
    [InlineData("catalogue", "cars")]
    [InlineData("suggest")]
    [InlineData("suggest", "--jsno", "brief.json")]
    [InlineData("--colour", "purple", "catalogue")]
    [InlineData("start", "x.json", "--pots", "0")]
    [InlineData("start", "x.json", "--pots", "many")]
    [InlineData("start", "x.json", "--spacing", "1 foots")]
    [InlineData("start", "-", "--rows", "100", "--pots", "5000")]
    public async Task A_wrong_call_is_told_on_the_error_stream_and_gives_1(params string[] args)
    {
        var call = await Call.Of(args);

        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.Empty(call.Out);
        Assert.StartsWith("dripwright: ", call.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--jsno", "--json")]
    [InlineData("--no-simlation", "--no-simulation")]
    [InlineData("--catalog", "--catalogue")]
    public async Task The_nearest_option_is_named_for_a_misspelt_one(string misspelt, string meant)
    {
        var call = await Call.Of("plan", misspelt, "one.json");

        Assert.Contains($"'{misspelt}'. Did you mean '{meant}'?", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_not_there_gives_2()
    {
        var call = await Call.Of("check", "/no/such/folder/x.rig.json");

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Empty(call.Out);
        Assert.Contains("no such", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_in_the_place_of_a_file_gives_2()
    {
        using var scratch = new Scratch();
        var call = await Call.Of("plan", scratch.Folder);

        Assert.Equal(Exit.FaultyFile, call.Exit);
    }

    [Fact]
    public async Task A_file_over_a_mebibyte_is_refused()
    {
        using var scratch = new Scratch();
        var call = await Call.Of("plan", scratch.Write("big.rig.json", new string(' ', (1 << 20) + 1)));

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("1 MiB", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Endless_input_is_refused_too()
    {
        // Standard input tells no length beforehand.
        var call = await Call.Of(new Setting { Input = new string(' ', (1 << 20) + 1) }, "plan", "-");

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Contains("1 MiB", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_faults_of_a_rig_file_are_told_at_once_on_the_error_stream()
    {
        using var scratch = new Scratch();
        var path = scratch.Write(
            "bad.rig.json",
            """
            {
              "rows": [ { "pots": 0, "spacing": "1 foots", "spacng": "1 ft" } ],
              "pump": { "model": "pump-of-dreams" }
            }
            """
        );
        var call = await Call.Of("check", path);

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Empty(call.Out);
        foreach (var place in new[] { ":2:", "rows[0].pots", "rows[0].spacing", "spacng", "pump.model" })
        {
            Assert.Contains(place, call.Error, StringComparison.Ordinal);
        }

        Assert.Contains("4 faults", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Faults_of_a_catalogue_file_are_told_the_same_way()
    {
        using var scratch = new Scratch();
        var path = scratch.Write("mine.json", """{ "pipess": [] }""");
        var call = await Call.Of("--catalogue", path, "catalogue");

        Assert.Equal(Exit.FaultyFile, call.Exit);
        Assert.Empty(call.Out);
        Assert.Contains("pipess", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_gives_3_exactly_when_it_tells_a_stop_finding()
    {
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Repository.Root, "demo", "awkward"), "*.rig.json"))
        {
            var call = await Call.Of("check", path);

            Assert.Equal(
                call.Out.Contains("STOP", StringComparison.Ordinal) ? Exit.RigWouldFail : Exit.Good,
                call.Exit
            );
        }
    }

    [Fact]
    public async Task A_name_cannot_steer_the_terminal()
    {
        var call = await Call.Of(new Setting { Input = """{ "name": "a\u001b[31mb [red]c" }""" }, "plan", "-");

        Assert.DoesNotContain('\u001b', call.Out + call.Error);
    }

    [Fact]
    public async Task A_stop_before_the_end_says_so_and_gives_130()
    {
        using var scratch = new Scratch();
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        var call = await Call.Of(
            new Setting { Stop = stop.Token },
            "pack",
            Repository.School,
            "--into",
            scratch.At("pack")
        );

        Assert.Equal(Exit.Stopped, call.Exit);
        Assert.Contains("Nothing was written", call.Error, StringComparison.Ordinal);
        Assert.Empty(scratch.Names);
    }
}
