using System.Text.RegularExpressions;

namespace Dripwright.Program.Tests;

/// <summary>In a language of marked words it shows which words of the program do not come from the texts.</summary>
public sealed partial class LanguageTests
{
    // Names of commands, options and files, and what a grower types, are the same in every language.
    private static readonly string[] s_same = ["dripwright"];

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

        Assert.Equal((await Call.Of(call)).Out.Length > 1000, true);
        Assert.Equal(
            Structure((await Call.Of(call)).Out),
            Structure((await Call.Of([.. call, "--language", "qps-ploc"])).Out)
        );
    }

    // Names of fields and numbers; a finding's sentences are for people.
    private static List<string> Structure(string json) => [.. Field().Matches(json).Select(match => match.Value)];

    private static IEnumerable<string> Own(string text, IReadOnlyCollection<string> same) =>
        Word()
            .Matches(Marked().Replace(OptionOrPath().Replace(text, " "), " "))
            .Select(match => match.Value)
            .Where(word => !same.Contains(word))
            .Distinct();

    [GeneratedRegex("⟦[^⟦⟧]*(⟦[^⟦⟧]*⟧[^⟦⟧]*)*⟧", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Marked();

    [GeneratedRegex(@"(?<!\w)--?[a-z][a-z-]*|(?<!\w)-\?", RegexOptions.None, 1000)]
    private static partial Regex OptionOrPath();

    [GeneratedRegex(@"\p{L}[\p{L}'-]+", RegexOptions.None, 1000)]
    private static partial Regex Word();

    [GeneratedRegex("\"[A-Za-z]+\":( -?[0-9.eE+-]+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Field();
}
