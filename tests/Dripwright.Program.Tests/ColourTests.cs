namespace Dripwright.Program.Tests;

public sealed class ColourTests
{
    private const char Escape = '\u001b';

    private static readonly string s_rig = Path.Combine(Repository.Root, "demo", "awkward", "undersized.rig.json");

    [Fact]
    public async Task Nothing_redirected_holds_an_escape_code()
    {
        var call = await Call.Of("plan", s_rig, "--no-simulation");

        Assert.DoesNotContain(Escape, call.Out + call.Error);
    }

    [Fact]
    public async Task A_terminal_gets_colour() =>
        Assert.Contains(Escape, (await Call.Of(new Setting { IsTerminal = true }, "check", s_rig)).Out);

    [Theory]
    [InlineData("NO_COLOR", "1")]
    [InlineData("TERM", "dumb")]
    public async Task The_environment_can_forbid_colour(string name, string value)
    {
        var setting = new Setting { IsTerminal = true, Variables = { [name] = value } };

        Assert.DoesNotContain(Escape, (await Call.Of(setting, "check", s_rig)).Out);
    }

    [Fact]
    public async Task Never_means_never_and_always_means_always()
    {
        var never = await Call.Of(new Setting { IsTerminal = true }, "check", s_rig, "--colour", "never");
        var always = await Call.Of("check", s_rig, "--colour", "always");

        Assert.DoesNotContain(Escape, never.Out);
        Assert.Contains(Escape, always.Out);
    }
}
