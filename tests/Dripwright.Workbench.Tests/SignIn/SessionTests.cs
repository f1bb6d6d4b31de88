using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Browser;
using Dripwright.Workbench.Tests.Http;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.SignIn;

/// <summary>A session lives on the server: a cookie alone is worth nothing.</summary>
public sealed class SessionTests(Chromium chromium)
{
    private const string Good = "six plain tomatoes";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static Visitor By => new("");

    [Theory]
    [InlineData("sign out")]
    [InlineData("end")]
    [InlineData("remove")]
    [InlineData("passphrase")]
    [InlineData("time")]
    public async Task A_cookie_that_somebody_kept_is_worth_nothing_once_its_session_has_ended(string how)
    {
        var clock = new MovedClock();
        await using var bench = await Bench.Open(withDemo: false, network: true, time: clock);
        Assert.Null(await bench.People.Add("Bo", Role.Owner, Good, By, Stop));
        Assert.Null(await bench.People.Add("Ada", Role.Owner, Good, By, Stop));
        using var browser = new Browsing(bench.Url);
        Assert.Equal("/", await browser.Enter("Ada", Good));
        var cookies = browser.Cookies();
        Assert.Equal(200, await With(bench, cookies));
        var ada = bench.People.Find("Ada")!;
        switch (how)
        {
            case "sign out":
                await browser.Post("/people", "leave", ("everywhere", "false"));
                break;
            case "end":
                Assert.Null(bench.People.EndSession(Assert.Single(ada.Sessions).Id, By));
                break;
            case "remove":
                Assert.Null(bench.People.Remove(ada.Id, By));
                break;
            case "passphrase":
                Assert.Null(await bench.People.SetPassphrase(ada.Id, "another plain one", By, Stop));
                break;
            default:
                clock.Ahead = People.Idle;
                break;
        }

        Assert.Equal(302, await With(bench, cookies));
    }

    [Fact]
    public async Task One_ends_ones_own_sessions_singly_and_nobody_elses()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        Assert.Null(await bench.People.Add("Bo", Role.Owner, Good, By, Stop));
        Assert.Null(await bench.People.Add("Ada", Role.Visitor, Good, By, Stop));
        using var here = new Browsing(bench.Url);
        using var there = new Browsing(bench.Url);
        using var others = new Browsing(bench.Url);
        await here.Enter("Ada", Good);
        await there.Enter("Ada", Good);
        await others.Enter("Bo", Good);
        var bos = Assert.Single(bench.People.Find("Bo")!.Sessions);
        Assert.Equal("/people?said=no-session", await here.Post("/people", "sessions/end", ("id", bos.Id)));
        Assert.Equal("/people?said=no-session", await here.Post("/people", "sessions/end", ("id", "all")));
        Assert.Equal("200", await others.Lead("/"));
        var theirs = bench.People.Find("Ada")!.Sessions.MaxBy(one => one.At)!;
        Assert.Equal("/people?done=ended", await here.Post("/people", "sessions/end", ("id", theirs.Id)));
        Assert.Equal("/sign-in", await there.Lead("/"));
        Assert.Equal("200", await here.Lead("/"));

        // The owner ends all but their own.
        Assert.Equal("/people?done=ended", await others.Post("/people", "sessions/end", ("id", "all")));
        Assert.Equal("/sign-in", await here.Lead("/"));
        Assert.Equal("200", await others.Lead("/"));
    }

    [Fact]
    public async Task Ones_own_passphrase_is_changed_with_the_one_that_holds_and_other_sessions_end()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        Assert.Null(await bench.People.Add("Ada", Role.Owner, Good, By, Stop));
        using var here = new Browsing(bench.Url);
        using var there = new Browsing(bench.Url);
        await here.Enter("Ada", Good);
        await there.Enter("Ada", Good);
        Assert.Equal("/people?said=current", await Change("not this one", "lamp ladder onion"));
        Assert.Equal("/people?said=common", await Change(Good, "passwordpassword"));
        Assert.Equal("/people?done=passphrase", await Change(Good, "lamp ladder onion"));
        Assert.Equal("200", await here.Lead("/"));
        Assert.Equal("/sign-in", await there.Lead("/"));
        Assert.Equal("/sign-in?said=wrong", await there.Enter("Ada", Good));
        Assert.Equal("/", await there.Enter("Ada", "lamp ladder onion"));

        Task<string> Change(string current, string passphrase) =>
            here.Post("/people", "passphrase", ("current", current), ("passphrase", passphrase));
    }

    [Fact]
    public async Task A_page_that_is_open_is_cut_when_whoever_opened_it_is_removed_and_keeps_nothing_any_more()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        Assert.Null(await bench.People.Add("Bo", Role.Owner, Good, By, Stop));
        Assert.Null(await bench.People.Add("Ada", Role.Grower, Good, By, Stop));
        var rig = await bench.Garden.AddRigAsync("Bench", Caller.TenPots, Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/sign-in");
        await page.Locator("#enter-name").FillAsync("Ada");
        await page.Locator("#enter-passphrase").FillAsync(Good);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("a.rig").WaitForAsync();
        await page.GotoAsync($"/rigs/{rig.Id}/row");
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(10);
        await page.Locator("#f-rows-0-pots").FillAsync("11");
        await page.Locator("#f-rows-0-pots").BlurAsync();
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(11);
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync(Dripwright.Language.Words.Of("kept.draft"));
        Assert.Equal("Ada", (await bench.Garden.StepsAsync(rig.Id, Stop))[^1].Who);

        Assert.Null(bench.People.Remove(bench.People.Find("Ada")!.Id, By));
        await Assertions
            .Expect(page.Locator("#components-reconnect-modal"))
            .ToBeVisibleAsync(new() { Timeout = 30_000 });
        var kept = (await bench.Garden.DraftAsync(rig.Id, Stop))!.Text;
        await Task.Delay(1000, Stop);
        Assert.Equal(kept, (await bench.Garden.DraftAsync(rig.Id, Stop))!.Text);
        await page.GotoAsync("/");
        await page.Locator("#enter-name").WaitForAsync();
    }

    [Fact]
    public async Task A_visitor_tries_a_rig_and_nothing_of_it_is_kept()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        Assert.Null(await bench.People.Add("Bo", Role.Owner, Good, By, Stop));
        Assert.Null(await bench.People.Add("Vi", Role.Visitor, Good, By, Stop));
        var rig = await bench.Garden.AddRigAsync("Bench", Caller.TenPots, Stop);
        await using var visit = await chromium.Visit(bench, 390, 844);
        var page = visit.Page;
        await page.GotoAsync("/sign-in");
        await page.Locator("#enter-name").FillAsync("Vi");
        await page.Locator("#enter-passphrase").FillAsync(Good);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("a.rig").WaitForAsync();
        await Assertions.Expect(page.Locator("#new-rig")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("a[href='/garden']")).ToHaveCountAsync(0);
        await page.GotoAsync($"/rigs/{rig.Id}/row");
        await Assertions.Expect(page.Locator("#role-look")).ToBeVisibleAsync();
        await page.Locator("#f-rows-0-pots").FillAsync("11");
        await page.Locator("#f-rows-0-pots").BlurAsync();
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(11);
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync(Dripwright.Language.Words.Of("kept.not"));
        Assert.Equal(Caller.TenPots, (await bench.Garden.DraftAsync(rig.Id, Stop))!.Text);
        Assert.Single(await bench.Garden.StepsAsync(rig.Id, Stop));
        await page.GotoAsync("/garden");
        Assert.EndsWith("/not-allowed", page.Url, StringComparison.Ordinal);
    }

    private static async Task<int> With(Bench bench, string cookies)
    {
        using var handler = new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false };
        using var client = new HttpClient(handler) { BaseAddress = new Uri(bench.Url) };
        client.DefaultRequestHeaders.Add("Cookie", cookies);
        using var answer = await client.GetAsync("/", Stop);
        return (int)answer.StatusCode;
    }

    private sealed class MovedClock : TimeProvider
    {
        public TimeSpan Ahead { get; set; }

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + Ahead;
    }
}
