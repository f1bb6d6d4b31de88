using System.Text.RegularExpressions;
using Dripwright.Workbench.SignIn;
using Dripwright.Workbench.Tests.Browser;
using Dripwright.Workbench.Tests.Http;

namespace Dripwright.Workbench.Tests.SignIn;

/// <summary>On a machine with several accounts only the one that opened the workbench comes in.</summary>
public sealed partial class LocalPassTests(Chromium chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_in_the_file_opens_the_workbench_in_a_browser_and_its_token_stands_in_no_address()
    {
        await using var bench = await Bench.Open(withDemo: false, onlyMe: true);
        var file = WorkbenchHost.PageToOpen(bench.App, bench.Url)!;
        await using var visit = await chromium.Visit(bench);
        List<string> addresses = [];
        visit.Page.Request += (_, request) => addresses.Add(request.Url);
        var token = TokenOf(await File.ReadAllTextAsync(file, Stop));
        await visit.Page.GotoAsync(new Uri(file).AbsoluteUri);
        await visit.Page.Locator("#new-rig").WaitForAsync();
        Assert.Equal(bench.Url + "/", visit.Page.Url);
        Assert.DoesNotContain(addresses, address => address.Contains(token, StringComparison.Ordinal));
        await visit.Page.ReloadAsync();
        await visit.Page.Locator("#new-rig").WaitForAsync();
        foreach (var log in Directory.GetFiles(bench.Folder, "*.log"))
        {
            Assert.DoesNotContain(token, await File.ReadAllTextAsync(log, Stop), StringComparison.Ordinal);
        }

        // Signing out ends it, as with people.
        await visit.Page.GotoAsync("/people");
        await visit.Page.Locator("button[name=everywhere][value=false]").ClickAsync();
        await visit.Page.GotoAsync("/");
        await visit.Page.Locator("#local-title").WaitForAsync();
    }

    [Fact]
    public async Task A_token_is_good_once_and_the_page_has_a_new_one_each_time()
    {
        await using var bench = await Bench.Open(withDemo: false, onlyMe: true);
        var file = WorkbenchHost.PageToOpen(bench.App, bench.Url)!;
        var first = TokenOf(await File.ReadAllTextAsync(file, Stop));
        using var browser = new Browsing(bench.Url);
        Assert.Equal("200", await browser.Forge("/sign-in/token", ("token", first)));
        Assert.Equal("200", await browser.Lead("/"));
        using var thief = new Browsing(bench.Url);
        Assert.Equal("/sign-in?said=token", await thief.Forge("/sign-in/token", ("token", first)));
        Assert.Equal("/sign-in", await thief.Lead("/"));
        var second = TokenOf(await File.ReadAllTextAsync(file, Stop));
        Assert.NotEqual(first, second);
        Assert.Equal("200", await thief.Forge("/sign-in/token", ("token", second)));
    }

    [Fact]
    public async Task Who_has_not_got_the_page_sees_nothing_and_cannot_guess_for_long()
    {
        await using var caller = await Caller.Open(onlyMe: true);
        (await caller.Get("rigs")).IsProblem(401);
        Assert.Equal(302, (await caller.Get("/")).Status);
        Assert.Equal(401, (await caller.Post("/_blazor/negotiate?negotiateVersion=1", "")).Status);
        // A name that leads here from the network is still refused.
        var file = WorkbenchHost.PageToOpen(caller.Bench.App, caller.Bench.Url)!;
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }

        using var thief = new Browsing(caller.Bench.Url);
        for (var i = 0; i < WrongTries.Most; i++)
        {
            Assert.Equal("/sign-in?said=token", await thief.Forge("/sign-in/token", ("token", $"{i}")));
        }

        Assert.Equal(
            "429",
            await thief.Forge("/sign-in/token", ("token", TokenOf(await File.ReadAllTextAsync(file, Stop))))
        );
    }

    [Fact]
    public async Task The_page_goes_when_the_workbench_is_closed()
    {
        var bench = await Bench.Open(withDemo: false, onlyMe: true);
        var file = WorkbenchHost.PageToOpen(bench.App, bench.Url)!;
        Assert.True(File.Exists(file));
        var folder = await bench.Stop();
        Assert.False(File.Exists(file));
        Directory.Delete(folder, recursive: true);
    }

    private static string TokenOf(string page) => Token().Match(page).Groups["token"].Value;

    [GeneratedRegex("name=\"token\" value=\"(?<token>[0-9a-f]{64})\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
