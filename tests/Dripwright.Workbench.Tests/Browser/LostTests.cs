using Dripwright.Language;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>When the workbench does not answer, the page says truly what is kept, and loses nothing that was typed.</summary>
public sealed class LostTests(Chromium chromium)
{
    private const string Ten = """{ "rows": [{ "pots": 10 }] }""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_typed_while_nobody_answers_is_not_called_kept_and_is_not_thrown_away_with_the_page()
    {
        var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Ten", Ten, Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row", rig.Id);
        await visit.Drawing.WaitForAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync(Words.Of("kept.draft"));
        var port = new Uri(bench.Url).Port;
        var folder = await bench.Stop();
        var banner = page.Locator("#components-reconnect-modal");
        await Assertions.Expect(banner).ToContainTextAsync(Words.Of("app.lost"));
        await Assertions.Expect(page.Locator(".kept")).Not.ToBeVisibleAsync();
        await page.Locator("#f-rows-0-spacing").FillAsync("17 in");
        await Assertions.Expect(banner).ToContainTextAsync("17 in");

        // Another one comes in its place, and knows nothing of this page.
        await using var again = await Bench.Open(folder, withDemo: false, port: port);
        await Assertions.Expect(banner).ToContainTextAsync(Words.Of("app.gone"), new() { Timeout = 60_000 });
        await Assertions.Expect(banner).ToContainTextAsync("17 in");
        Assert.Equal("17 in", await page.Locator("#f-rows-0-spacing").InputValueAsync());
        Assert.DoesNotContain("17 in", (await again.Garden.DraftAsync(rig.Id, Stop))!.Text, StringComparison.Ordinal);
        await banner.GetByRole(AriaRole.Link).ClickAsync();
        await visit.Drawing.WaitForAsync();
        await page.Locator("#f-rows-0-spacing").FillAsync("17 in");
        await page.Locator("#f-rows-0-spacing").BlurAsync();
        await Assertions.Expect(page.Locator(".kept")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync(Words.Of("kept.draft"));
        await IsKept(again, rig.Id, "17 in");
    }

    [Fact]
    public async Task What_is_typed_while_the_network_is_away_is_kept_when_it_comes_back()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Ten", Ten, Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        var isAway = false;
        IWebSocketRoute? way = null;
        await page.RouteWebSocketAsync(
            url => url.Contains("_blazor", StringComparison.Ordinal),
            socket =>
            {
                if (isAway)
                {
                    _ = socket.CloseAsync();
                    return;
                }

                way = socket;
                _ = socket.ConnectToServer();
            }
        );
        // Where no socket opens, the page would fall back to asking by ordinary requests: the network is away for these too.
        await page.RouteAsync(
            url => url.Contains("_blazor", StringComparison.Ordinal),
            request => isAway ? request.AbortAsync() : request.ContinueAsync()
        );
        await visit.Rig("row", rig.Id);
        await visit.Drawing.WaitForAsync();
        isAway = true;
        await way!.CloseAsync();
        var banner = page.Locator("#components-reconnect-modal");
        await Assertions.Expect(banner).ToContainTextAsync(Words.Of("app.lost"));
        await page.Locator("#f-rows-0-spacing").FillAsync("17 in");
        await Assertions.Expect(banner).ToContainTextAsync("17 in");
        isAway = false;
        await Assertions.Expect(banner).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync(Words.Of("kept.draft"));
        await IsKept(bench, rig.Id, "17 in");
    }

    /// <summary>The page says "kept" also before the newest letters have left it: what counts is what arrives.</summary>
    private static async Task IsKept(Bench bench, int rig, string text)
    {
        string? draft = null;
        for (var i = 0; i < 300 && draft?.Contains(text, StringComparison.Ordinal) != true; i++)
        {
            await Task.Delay(100, Stop);
            draft = (await bench.Garden.DraftAsync(rig, Stop))!.Text;
        }

        Assert.Contains(text, draft, StringComparison.Ordinal);
    }
}
