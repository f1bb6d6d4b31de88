using System.Text.RegularExpressions;
using Dripwright.Terminal;

namespace Dripwright.Program.Tests;

/// <summary>The handbook's first page, done as a newcomer would do it.</summary>
public sealed partial class StartPageTests
{
    private static readonly string s_page = File.ReadAllText(
        Path.Combine(Repository.Root, "docs", "handbook", "start.md")
    );

    [Fact]
    public async Task Each_command_of_the_page_does_what_comes_before_the_next()
    {
        using var scratch = new Scratch();
        List<string> done = [];
        foreach (var command in Commands())
        {
            var words = command.Split(' ').Select(word => word is "my.rig.json" or "my-pack" ? scratch.At(word) : word);
            // A newcomer at a terminal, who takes what stands in brackets.
            var call = await Call.Of(new Setting { IsTerminal = true, Input = new string('\n', 20) }, [.. words]);

            Assert.True(call.Exit == Exit.Good, $"{command}: {call.Exit} {call.Error}");
            done.Add(command.Split(' ')[0]);
        }

        Assert.Equal(["start", "catalogue", "check", "plan", "pack"], done.Distinct());
        Assert.Contains("my-pack/build-pack.pdf", scratch.Names);
    }

    [Fact]
    public async Task The_first_file_is_asked_for_in_as_many_questions_as_the_page_says()
    {
        var asked = Regex
            .Match(s_page, @"\basks for ([^.]*)\.", RegexOptions.None, TimeSpan.FromSeconds(1))
            .Groups[1]
            .Value;
        var named = Regex.Split(asked, @", and |, | and (?!pump)", RegexOptions.None, TimeSpan.FromSeconds(1));

        var call = await Call.Of(new Setting { IsTerminal = true, Input = new string('\n', 20) }, "start", "-");

        Assert.Equal(8, named.Length);
        Assert.Equal(named.Length, Brackets().Count(call.Error));
        // Every field of the file has its comment over it.
        var lines = call.Out.Split('\n');
        Assert.All(
            lines.Index().Where(line => Field().IsMatch(line.Item)),
            line => Assert.StartsWith("//", lines[line.Index - 1].TrimStart(), StringComparison.Ordinal)
        );
        Assert.True(lines.Count(line => Field().IsMatch(line)) > 100);
    }

    [Fact]
    public async Task The_figures_to_look_at_first_are_those_of_the_plan()
    {
        var from = s_page.IndexOf("figures to look at first", StringComparison.Ordinal);
        var figures = Figures()
            .Matches(s_page[from..s_page.IndexOf("## 5.", StringComparison.Ordinal)])
            .Select(match => match.Groups[1].Value)
            .ToList();

        var plan = await Call.Of("plan", Repository.School);

        Assert.True(figures.Count >= 5);
        Assert.All(figures, figure => Assert.Contains($"  {figure} ", plan.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_word_run_opens_the_workbench_as_the_page_says()
    {
        Assert.Contains("say `./run`", s_page, StringComparison.Ordinal);
        Assert.Contains("prints an\naddress", s_page.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        var script = File.ReadAllLines(Path.Combine(Repository.Root, "run"));
        Assert.Equal("exec dotnet \"$program\" open", script[^1]);
    }

    /// <summary>What is said after "./run", in the order of the page.</summary>
    private static IEnumerable<string> Commands() =>
        Run().Matches(s_page).Select(match => match.Groups[1].Value.Trim());

    [GeneratedRegex(@"(?:^    |`)\./run +([a-z][^`\n]*)", RegexOptions.Multiline)]
    private static partial Regex Run();

    [GeneratedRegex(@"\[[^\]]*\] ")]
    private static partial Regex Brackets();

    [GeneratedRegex("^ *\"[A-Za-z]+\": ")]
    private static partial Regex Field();

    [GeneratedRegex(@"\*([A-Z][^*]+)\*")]
    private static partial Regex Figures();
}
