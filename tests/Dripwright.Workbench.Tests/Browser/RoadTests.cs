using System.IO.Compression;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>The main roads through the pages, in a real browser.</summary>
public sealed class RoadTests(Chromium chromium)
{
    private static readonly LocatorWaitForOptions s_seen = new() { State = WaitForSelectorState.Visible };

    [Fact]
    public async Task A_newcomer_opens_the_demo_changes_it_and_takes_the_build_pack_home()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Demo: sixteen staggered pots" }).ClickAsync();
        await visit.Drawing.WaitForAsync(s_seen);
        Assert.Equal(16, await page.Locator("#paper [data-pot]").CountAsync());

        await page.GetByRole(AriaRole.Link, new() { Name = "Row", Exact = true }).ClickAsync();
        await page.Locator("#f-rows-0-pots").FillAsync("15");
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(16);
        Assert.Contains("expected", await page.Locator("#f-rows-0-planting-2 .fault, .fault").First.TextContentAsync());
        await page.Locator("#f-rows-0-pots").FillAsync("16");
        await page.Locator("#f-rows-0-spacing").FillAsync("8 1/2 in");
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync("Kept as draft");

        await page.Locator("#paper [data-part='pot-1-3']").ClickAsync();
        await page.Locator("#pot-planted").UncheckAsync();
        await Assertions
            .Expect(page.Locator("#paper [data-part='pot-1-3']"))
            .ToHaveAttributeAsync(
                "aria-label",
                new System.Text.RegularExpressions.Regex(
                    "empty",
                    System.Text.RegularExpressions.RegexOptions.None,
                    TimeSpan.FromSeconds(1)
                )
            );

        await page.GetByRole(AriaRole.Link, new() { Name = "Build pack" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the whole folder (zip)" }).ClickAsync();
        var ready = page.Locator("#pack-ready");
        await ready.WaitForAsync(new() { Timeout = 60_000 });
        var download = await page.RunAndWaitForDownloadAsync(() => ready.ClickAsync());
        await using var zip = await ZipFile.OpenReadAsync(
            await download.PathAsync(),
            TestContext.Current.CancellationToken
        );
        Assert.NotNull(zip.GetEntry("build-pack.pdf"));
        var rig = zip.Entries.Single(entry => entry.Name.EndsWith(".rig.json", StringComparison.Ordinal));
        using var reader = new StreamReader(await rig.OpenAsync(TestContext.Current.CancellationToken));
        var text = await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.Contains("8 1/2 in", text, StringComparison.Ordinal);
        Assert.Contains("// An invented garden", text, StringComparison.Ordinal);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task Undo_reaches_back_across_a_restart()
    {
        var bench = await Bench.Open();
        await using (var visit = await chromium.Visit(bench))
        {
            await visit.Rig("row");
            await visit.Page.Locator("#f-rows-0-spacing").FillAsync("9 in");
            await visit.Page.Locator("#f-rows-0-spacing").BlurAsync();
            await Assertions.Expect(visit.Page.Locator("[data-key='undo']")).ToBeEnabledAsync();
            await Assertions.Expect(visit.Page.Locator(".kept")).ToHaveTextAsync("Kept as draft");
        }

        await using var again = await Bench.Open(await bench.Stop());
        await using var later = await chromium.Visit(again);
        await later.Rig("row");
        var spacing = later.Page.Locator("#f-rows-0-spacing");
        await Assertions.Expect(spacing).ToHaveValueAsync("9 in");
        await later.Page.Locator("h1").ClickAsync();
        await later.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(spacing).Not.ToHaveValueAsync("9 in");
        await later.Page.Keyboard.PressAsync("Control+y");
        await Assertions.Expect(spacing).ToHaveValueAsync("9 in");
    }

    [Fact]
    public async Task Of_two_pages_in_conflict_neither_overwrites_the_other_and_both_can_be_had()
    {
        // The first page waits long before it keeps, so that the second comes between.
        await using var bench = await Bench.Open(keepAfter: TimeSpan.FromMinutes(1));
        await using var first = await chromium.Visit(bench);
        await first.Rig("row");
        await using var second = await first.Beside();
        await second.Rig("row");
        await first.Drawing.WaitForAsync(s_seen);
        await second.Drawing.WaitForAsync(s_seen);

        // Typing without leaving the field: it is on the first page only.
        await first.Page.Locator("#f-rows-0-spacing").FillAsync("9 in");
        await Assertions.Expect(first.Page.Locator(".kept")).ToHaveTextAsync("Keeping …");
        await second.Page.Locator("#f-rows-0-spacing").FillAsync("11 in");
        await second.Page.Locator("#f-rows-0-spacing").PressAsync("Tab");

        var notice = first.Page.Locator("#conflict");
        await notice.WaitForAsync(s_seen);
        Assert.Equal("", string.Join("\n", await first.Axe()));
        await first.Page.GetByRole(AriaRole.Button, new() { Name = "Keep what is on this page" }).ClickAsync();
        await Assertions.Expect(notice).ToHaveCountAsync(0);
        await Assertions.Expect(first.Page.Locator("#f-rows-0-spacing")).ToHaveValueAsync("9 in");
        await Assertions.Expect(second.Page.Locator("#f-rows-0-spacing")).ToHaveValueAsync("9 in");
        await first.Page.Locator("[data-key='undo']").ClickAsync();
        await Assertions.Expect(first.Page.Locator("#f-rows-0-spacing")).ToHaveValueAsync("11 in");
    }

    [Theory]
    [InlineData("""{ "name": "Faulty", "rows": [{ "pots": 10, "spacing": "1 foots" }], "pumpe": 1 }""", "1 foots")]
    [InlineData("{ \"name\": \"Broken\", ", "end of the file")]
    [InlineData("not a rig <script>alert(1)</script>", "expected")]
    public async Task A_file_with_faults_comes_in_and_shows_them(string text, string told)
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        await visit.Page.GotoAsync("/");
        await Assertions.Expect(visit.Page.Locator("#bring-file")).ToBeEnabledAsync();
        await visit
            .Page.Locator("#bring-file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "bad.rig.json",
                    MimeType = "application/json",
                    Buffer = System.Text.Encoding.UTF8.GetBytes(text),
                }
            );
        await Assertions.Expect(visit.Page.Locator("#findings")).ToContainTextAsync(told);
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_finding_leads_to_the_field_that_cures_it()
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Low",
            """{ "name": "Low", "rows": [{ "standHeight": "5 in" }] }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench);
        await visit.Rig("site");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go to: row 1, stand height" }).First.ClickAsync();
        await Assertions.Expect(visit.Page.Locator("#f-rows-0-standHeight")).ToBeFocusedAsync();
        Assert.EndsWith("/row", visit.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_system_of_units_changes_what_is_shown_and_nothing_in_the_file()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync(s_seen);
        var rig = (await bench.Garden.RigsAsync(TestContext.Current.CancellationToken))[^1].Id;
        var before = await bench.Garden.DraftAsync(rig, TestContext.Current.CancellationToken);
        Assert.NotNull(before);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "in, gal" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".sentence")).ToContainTextAsync("gal");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "mm, L" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".sentence")).Not.ToContainTextAsync("gal");
        Assert.Equal(before, await bench.Garden.DraftAsync(rig, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_revision_is_saved_compared_and_brought_back()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("revisions");
        await page.Locator("#revision-note").FillAsync("before the saw comes out");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the revision" }).ClickAsync();
        await Assertions.Expect(page.Locator(".lines li")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Link, new() { Name = "Row", Exact = true }).ClickAsync();
        await page.Locator("#f-rows-0-pots").FillAsync("14");
        await page.Locator("#f-rows-0-pots").BlurAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Revisions", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare revision 1" }).ClickAsync();
        await Assertions.Expect(page.Locator(".compare .pair svg")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator(".compare table")).ToContainTextAsync("pot", new() { IgnoreCase = true });
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await page.GetByRole(AriaRole.Button, new() { Name = "Restore revision 1" }).ClickAsync();
        await Assertions.Expect(page.Locator(".notice.good")).ToContainTextAsync("revision 1");
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }
}
