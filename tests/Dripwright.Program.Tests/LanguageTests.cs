using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>In a language of marked words it shows which words of the program do not come from the texts.</summary>
public sealed partial class LanguageTests
{
    // Names of commands, options and files, and what a grower types, are the same in every language.
    private static readonly string[] s_same =
    [
        "dripwright",
        // What can stand behind "people", and behind an option of "make-it-work".
        "list",
        "add",
        "role",
        "passphrase",
        "remove",
        "sessions",
        "sign-out",
        "keys",
        "key",
        "end-key",
        "log",
        "fewest",
        "cheapest",
    ];

    private static readonly string[] s_units =
    [
        "mm",
        "cm",
        "mg",
        "mL",
        "dS",
        "kWh",
        "kPa",
        "pH",
        "EC",
        "kg",
        "Ca",
        "Mg",
        "USD",
        "Fe",
        "Mn",
        "Zn",
        "Cu",
        "Mo",
    ];

    public static TheoryData<string> Commands => [.. CallTests.Commands];

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Every_word_of_a_commands_help_comes_from_the_texts(string command)
    {
        var call = await Call.Of(command, "--help", "--language", "qps-ploc");

        Assert.Equal(Exit.Good, call.Exit);
        Assert.Contains('⟦', call.Out);
        Assert.Equal("", string.Join(' ', Own(call.Out, [.. s_same, command])));
    }

    [Fact]
    public async Task Every_word_of_the_first_help_comes_from_the_texts()
    {
        var call = await Call.Of("--language", "qps-ploc", "--help");

        Assert.Equal("", string.Join(' ', Own(call.Out, [.. s_same, .. CallTests.Commands])));
    }

    [Theory]
    [InlineData("pln")]
    [InlineData("plan")]
    [InlineData("plan", "x", "--jsno")]
    [InlineData("pack", "x")]
    [InlineData("pack", "x", "--into", "y", "--paper", "a5")]
    [InlineData("pack", "x", "--into", "y", "--date", "soon")]
    [InlineData("open", "--port", "many")]
    [InlineData("open", "--port")]
    [InlineData("start", "-", "--pots", "many")]
    [InlineData("start", "-", "--staggered", "perhaps")]
    [InlineData("catalogue", "cars")]
    [InlineData("--colour", "purple", "catalogue")]
    public async Task What_is_wrong_with_a_call_is_told_in_the_readers_language(params string[] args)
    {
        var call = await Call.Of([.. args, "--language", "qps-ploc"]);

        Assert.Equal(Exit.WrongCall, call.Exit);
        Assert.Contains('⟦', call.Error);
        Assert.Equal("", string.Join(' ', Own(call.Error, [.. s_same, .. args, .. CallTests.Commands])));
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("mix")]
    [InlineData("weeks-ahead")]
    public async Task Every_word_of_a_typical_run_comes_from_the_texts_or_is_data(string command)
    {
        // So wide that no name is broken over two lines.
        var call = await Call.Of(new Setting { Width = 400 }, command, Repository.FoodBank, "--language", "qps-ploc");

        Assert.Empty(call.Error);
        Assert.Contains('⟦', call.Out);
        var own = Own(Without(call.Out, Data(Repository.FoodBank)), s_units);
        Assert.True(!own.Any(), string.Join(' ', own));
    }

    [Fact]
    public async Task Every_word_about_a_garden_comes_from_the_texts_or_is_data()
    {
        using var scratch = new Scratch();
        string[] there = ["--garden", scratch.At("yard.dripwright"), "--language", "qps-ploc"];
        string[][] calls =
        [
            ["import", Repository.School],
            ["backup", scratch.At("copy")],
            ["restore", scratch.At("copy")],
            ["export", scratch.At("yard.json")],
            ["export", scratch.At("yard.json")],
            ["export", scratch.At("rig.json"), "--rig", "Nowhere"],
            ["restore", scratch.At("nothing")],
            ["restore", scratch.Write("letter.txt", "Dear all,")],
            ["empty-bin"],
            ["check", scratch.At("nothing")],
        ];
        foreach (var words in calls)
        {
            var call = await Call.Of([.. words, .. words[0] == "check" ? there[2..] : there]);
            var said = call.Out + call.Error;
            Assert.Contains('⟦', said);
            var own = Own(Without(said, [scratch.Folder, .. Data(Repository.School)]), [.. s_same, "copy", "restore"]);
            Assert.True(!own.Any(), $"{words[0]}: {string.Join(' ', own)}");
        }
    }

    [Theory]
    [InlineData("check")]
    [InlineData("suggest")]
    [InlineData("catalogue")]
    [InlineData("import")]
    public async Task Every_fault_of_a_bad_file_is_told_in_the_readers_language(string command)
    {
        using var scratch = new Scratch();
        var kind = command switch
        {
            "suggest" => BadFileKind.Brief,
            "catalogue" => BadFileKind.Catalogue,
            _ => BadFileKind.Rig,
        };
        // A garden is imported by the same command, which judges a rig file alike; a few show it.
        var texts = command == "import" ? BadFiles.Of(kind).TakeLast(5) : BadFiles.Of(kind);
        foreach (var text in texts)
        {
            var path = scratch.Write("bad.json", text);
            string[] words = command switch
            {
                "catalogue" => ["check", Repository.FoodBank, "--catalogue", path],
                "import" => ["import", path, "--garden", scratch.At("yard.dripwright")],
                _ => [command, path],
            };
            var call = await Call.Of([.. words, "--language", "qps-ploc"]);

            Assert.Equal(Exit.FaultyFile, call.Exit);
            // That no word of these leaks is tested where the texts are.
            var lines = Told(kind, path, text, "qps-ploc");
            Assert.All(lines, line => Assert.StartsWith("⟦", line, StringComparison.Ordinal));
            Assert.NotEqual(Told(kind, path, text, "en"), lines);
            Assert.Equal(lines, call.Error.Split(Environment.NewLine).Take(lines.Count));
        }
    }

    [Fact]
    public async Task The_environment_says_the_language_where_the_call_does_not()
    {
        var asked = new Setting { Variables = { ["LANG"] = "qps_PLOC.UTF-8" } };
        Assert.Contains('⟦', (await Call.Of(asked, "--help")).Out);
        Assert.DoesNotContain('⟦', (await Call.Of(asked, "--help", "--language", "en")).Out);
        Assert.DoesNotContain(
            '⟦',
            (await Call.Of(asked with { Variables = new() { ["LANG"] = "xx_XX" } }, "--help")).Out
        );
    }

    [Fact]
    public async Task A_language_without_texts_is_refused_with_those_there_are()
    {
        var call = await Call.Of("schema", "--language", "klingon");

        Assert.Equal((Exit.WrongCall, ""), (call.Exit, call.Out));
        Assert.Contains("one of: en", call.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_for_programs_are_the_same_in_every_language()
    {
        string[] call = ["plan", Repository.School, "--json", "--no-simulation"];

        Assert.NotEmpty(Structure((await Call.Of(call)).Out));
        Assert.Equal(
            Structure((await Call.Of(call)).Out),
            Structure((await Call.Of([.. call, "--language", "qps-ploc"])).Out)
        );
    }

    private static List<string> Told(BadFileKind kind, string path, string text, string language)
    {
        using var speaking = new Speaking(CultureInfo.GetCultureInfo(language));
        var (bytes, parts) = (Encoding.UTF8.GetBytes(text), PartsCatalogue.Default);
        var faults = kind switch
        {
            BadFileKind.Rig => RigReader.Read(bytes, path, parts).Faults,
            BadFileKind.Brief => BriefReader.Read(bytes, path, parts).Faults,
            _ => CatalogueReader.Read(bytes, path, parts).Faults,
        };
        return [.. faults.Told().Select(fault => fault.ToString())];
    }

    // Names and sources in the catalogue, and what the grower wrote; the longest first.
    private static List<string> Data(string rig)
    {
        var catalogue = PartsCatalogue.Default;
        var reading = RigReader.Read(File.ReadAllBytes(rig), "rig", catalogue);
        var plan = Planner.Of(reading.Resolved!, reading.Assumed, new PlanOptions { Draws = 0 });
        return
        [
            .. CatalogueListing
                .Of(catalogue)
                .SelectMany(group => group.Rows.SelectMany(row => row))
                .Concat(plan.Findings.Select(finding => finding.Source))
                .Concat(reading.Assumed.SelectMany(assumed => new[] { assumed.Path, assumed.Value }))
                .Concat(catalogue.Targets.Stages.Select(stage => stage.Crop))
                .Append(plan.Rig.Name)
                .Append(plan.Rig.Site.Name)
                .Append(rig)
                .Where(text => text.Length > 2)
                .Distinct()
                .OrderByDescending(text => text.Length),
        ];
    }

    // Lines are broken at the terminal's width.
    private static string Without(string said, IEnumerable<string> data)
    {
        var text = Space().Replace(said, " ");
        foreach (var one in data)
        {
            text = text.Replace(Space().Replace(one, " "), " ", StringComparison.OrdinalIgnoreCase);
        }

        return text;
    }

    // Names of fields and numbers; a finding's sentences are for people.
    private static List<string> Structure(string json) => [.. Field().Matches(json).Select(match => match.Value)];

    private static string Unmarked(string text)
    {
        var left = new StringBuilder();
        var depth = 0;
        foreach (var letter in text)
        {
            depth += letter == '⟦' ? 1 : 0;
            left.Append(depth > 0 ? ' ' : letter);
            depth -= letter == '⟧' && depth > 0 ? 1 : 0;
        }

        return left.ToString();
    }

    private static IEnumerable<string> Own(string text, IReadOnlyCollection<string> same) =>
        Word()
            .Matches(Unmarked(OptionOrPath().Replace(text, " ")))
            .Select(match => match.Value)
            .Where(word => !same.Contains(word))
            .Distinct();

    [GeneratedRegex(@"(?<!\w)--?[a-z][a-z-]*|(?<!\w)-\?", RegexOptions.None, 1000)]
    private static partial Regex OptionOrPath();

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Space();

    [GeneratedRegex(@"\p{L}[\p{L}'-]+", RegexOptions.None, 1000)]
    private static partial Regex Word();

    [GeneratedRegex("\"[A-Za-z]+\":( -?[0-9.eE+-]+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Field();
}
