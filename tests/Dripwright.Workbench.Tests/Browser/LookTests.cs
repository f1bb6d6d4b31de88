using System.Globalization;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>Pictures of the pages, for people to look at. Made only where a folder for them is named.</summary>
/// <remarks>Those of docs/pictures lie in its folder <c>docs</c>.</remarks>
public sealed class LookTests(Chromium chromium)
{
    private static readonly string[] s_full = ["water", "parts", "printed", "nutrients", "adjust"];

    private static readonly (string Room, string Picture)[] s_docs =
    [
        ("row", "workbench"),
        ("water", "water"),
        ("parts", "parts"),
        ("printed", "printed"),
        ("pack", "pack"),
    ];

    [Fact]
    public async Task Pictures_of_the_pages_are_made_where_a_folder_is_named()
    {
        var folder = Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES");
        Assert.SkipWhen(folder is null, "DRIPWRIGHT_PICTURES names no folder.");
        Directory.CreateDirectory(folder);
        await using var bench = await Bench.Open();
        await bench.Garden.AddDocumentAsync(
            "brief",
            "Brief",
            ProposeTests.FewRigs,
            TestContext.Current.CancellationToken
        );
        var rig = (await bench.Garden.RigsAsync(TestContext.Current.CancellationToken))[^1];
        await Revise(bench, rig.Id);
        foreach (var dark in new[] { false, true })
        {
            foreach (var (width, height) in new[] { (1280, 900), (390, 844) })
            {
                await using var visit = await chromium.Visit(bench, width, height, dark);
                var look = width.ToString(CultureInfo.InvariantCulture) + (dark ? "-dark" : "");
                var docs =
                    dark ? null
                    : width > 500 ? ""
                    : "-phone";
                await Outside(visit, folder, look, docs);
                await Rooms(visit, folder, look, docs);
                await Failing(visit, folder, look);
            }
        }

        await SigningIn(folder);
    }

    private static async Task Revise(Bench bench, int id)
    {
        var stop = TestContext.Current.CancellationToken;
        var draft = (await bench.Garden.DraftAsync(id, stop))!;
        await bench.Garden.SaveRevisionAsync(id, draft.Version, "Ada", "as built", stop);
        var text = Dripwright.Workbench.Editing.RigFileText.Set(draft.Text, "rows[0].pots", 10);
        var kept = (Store.Ground.DraftOutcome.Kept)
            await bench.Garden.KeepDraftAsync(id, text, draft.Version, "two pots less", stop);
        await bench.Garden.SaveRevisionAsync(id, kept.Draft.Version, "Bo", "two pots less", stop);
        await bench.Garden.KeepDraftAsync(id, draft.Text, kept.Draft.Version, "twelve pots again", stop);
    }

    private static async Task Outside(Visit visit, string folder, string look, string? docs)
    {
        var page = visit.Page;
        await page.GotoAsync("/");
        await page.Locator("a.rig").First.WaitForAsync();
        await page.WaitForTimeoutAsync(500);
        await Take(page, folder, $"rigs-{look}", full: true, docs is null ? null : "rigs" + docs);
        await page.GotoAsync("/garden");
        await page.Locator("#onhand-save").WaitForAsync();
        await Take(page, folder, $"garden-{look}", full: true);
        await page.GotoAsync("/propose");
        await page.Locator(".brief .main").ClickAsync();
        await page.Locator(".proposals li").First.WaitForAsync(new() { Timeout = 120_000 });
        await page.Locator("#results").ScrollIntoViewIfNeededAsync();
        await page.WaitForTimeoutAsync(1200);
        await Take(page, folder, $"propose-{look}", full: true, docs is null ? null : "propose" + docs);
        await page.GotoAsync("/methods");
        await Take(page, folder, $"methods-{look}", full: false);
        await page.GotoAsync("/methods/drain-water-surface");
        await Take(page, folder, $"method-{look}", full: false);
        await page.GotoAsync("/no-such-page");
        await Take(page, folder, $"notthere-{look}", full: false);
        await page.GotoAsync("/people");
        await Take(page, folder, $"alone-{look}", full: false);
    }

    private static async Task Rooms(Visit visit, string folder, string look, string? docs)
    {
        var page = visit.Page;
        foreach (var stage in Dripwright.Workbench.Editing.Stage.All)
        {
            var room = stage.Key;
            await visit.Rig(room);
            if (room is "printed" or "pack")
            {
                await page.Locator(".facts dl, .sheetview svg").First.WaitForAsync(new() { Timeout = 60_000 });
            }

            await AtRest(page);
            await Take(page, folder, $"{room}-{look}", full: false);
            if (docs is not null && s_docs.FirstOrDefault(one => one.Room == room).Picture is { } picture)
            {
                await Telling(page, room);
                await Take(page, folder, $"{room}-{look}-docs", full: false, picture + docs);
            }

            if (s_full.Contains(room))
            {
                await Take(page, folder, $"{room}-{look}-full", full: true);
            }
        }

        await visit.Rig("printed");
        foreach (var part in (string[])["J1", "A1", "M1", "M2", "E1", "Z1", "Y1"])
        {
            await page.Locator($".pick:has(b:text-is('{part}'))").ClickAsync(new() { Timeout = 60_000 });
            await AtRest(page);
            await Take(page, folder, $"printed-{part}-{look}", full: true);
        }

        await visit.Rig("revisions");
        await page.Locator("button[aria-label^='Compare']").First.ClickAsync();
        await page.Locator("#expansion").WaitForAsync();
        await Take(page, folder, $"compare-{look}", full: true);
    }

    private static async Task Failing(Visit visit, string folder, string look)
    {
        var page = visit.Page;
        var failed = await TroubleTests.Failed(folder);
        await page.RouteAsync(
            "**/garden",
            route => route.FulfillAsync(new() { ContentType = "text/html; charset=utf-8", Body = failed })
        );
        await page.GotoAsync("/garden");
        await Take(page, folder, $"trouble-{look}", full: false);
        await TroubleTests.BreakOnLeaving(page);
        await visit.Rig("row");
        await AtRest(page);
        await page.EvaluateAsync(
            """() => document.getElementById("components-reconnect-modal").dispatchEvent(new CustomEvent("components-reconnect-state-changed", { detail: { state: "show" } }))"""
        );
        await Take(page, folder, $"lost-{look}", full: false);
        await page.EvaluateAsync("""() => (document.getElementById("components-reconnect-modal").hidden = true)""");
        await page.EvaluateAsync("""() => document.querySelector(".titleblock .rig a").click()""");
        await page.Locator("#blazor-error-ui").WaitForAsync();
        await Take(page, folder, $"broken-{look}", full: false);
    }

    // Not while it is still planning, and not while the last change of the drawing is still marked.
    private static async Task AtRest(IPage page)
    {
        await page.Locator(".verdict:is(.good, .mend, .stop)").WaitForAsync(new() { Timeout = 60_000 });
        await page.WaitForTimeoutAsync(1800);
    }

    // What a room is for, where that does not stand first on its page.
    private static async Task Telling(IPage page, string room)
    {
        if (room is "water")
        {
            await page.Locator("#drawing select").Last.SelectOptionAsync("Flow");
        }

        if (room is "water" or "parts")
        {
            await page.Locator(room is "water" ? ".plots" : ".parts").EvaluateAsync("at => at.scrollIntoView()");
            await AtRest(page);
        }
    }

    private async Task SigningIn(string folder)
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        var code = WorkbenchHost.CodeForNewPerson(bench.App)!;
        foreach (var width in new[] { 1280, 390 })
        {
            await using var visit = await chromium.Visit(bench, width, 844, dark: width == 390);
            var page = visit.Page;
            await page.GotoAsync("/sign-in?said=code");
            var look = width.ToString(CultureInfo.InvariantCulture);
            await Take(page, folder, $"sign-in-{look}", full: true);
            if (width == 1280)
            {
                await page.Locator("#join-code").FillAsync(code);
                await page.Locator("#join-name").FillAsync("Ada");
                await page.Locator("#join-passphrase").FillAsync("six plain tomatoes");
            }
            else
            {
                await page.Locator("#enter-name").FillAsync("Ada");
                await page.Locator("#enter-passphrase").FillAsync("six plain tomatoes");
            }

            await page.Keyboard.PressAsync("Enter");
            await page.Locator("#new-rig").WaitForAsync();
            await Take(page, folder, $"empty-{look}", full: true);
            await page.GotoAsync("/people");
            await page.Locator("#key-label").FillAsync("shed");
            await page.Keyboard.PressAsync("Enter");
            await page.GetByRole(AriaRole.Status).WaitForAsync();
            await Take(page, folder, $"people-{look}", full: true);
        }
    }

    private static async Task Take(IPage page, string folder, string name, bool full, string? docs = null)
    {
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = full });
        if (docs is not null)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "docs", docs + ".png") });
        }
    }
}
