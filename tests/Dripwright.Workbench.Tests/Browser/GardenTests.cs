using Dripwright.Language;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>The garden as a whole: bin, backups, own catalogue, parts on hand.</summary>
public sealed class GardenTests(Chromium chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_rig_in_the_bin_is_restored_as_it_was()
    {
        await using var bench = await Bench.Open();
        var first = (await bench.Garden.RigsAsync(Stop))[0].Id;
        await bench.Garden.RemoveRigAsync(first, Stop);
        await using var visit = await chromium.Visit(bench);
        await visit.Page.GotoAsync("/garden");
        await visit.Page.Locator(".bin button").ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".bin")).ToHaveCountAsync(0);
        Assert.Contains(await bench.Garden.RigsAsync(Stop), rig => rig.Id == first);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task The_bin_is_emptied_after_a_question_that_says_how_many(int width)
    {
        await using var bench = await Bench.Open();
        foreach (var rig in await bench.Garden.RigsAsync(Stop))
        {
            await bench.Garden.RemoveRigAsync(rig.Id, Stop);
        }

        await using var visit = await chromium.Visit(bench, width, 844);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        await page.Locator("#bin-empty").ClickAsync();
        await Assertions.Expect(page.Locator("#bin-sure")).ToContainTextAsync("2 rigs");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await page.Locator("#bin-delete").ClickAsync();
        await Assertions.Expect(page.Locator(".bin")).ToHaveCountAsync(0);
        Assert.Empty(await bench.Garden.BinAsync(Stop));
        await Assertions.Expect(page.Locator("#disk")).ToContainTextAsync("kB");
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task An_older_file_in_the_gardens_place_is_told_on_the_first_page()
    {
        var folder = await (await Bench.Open()).Stop();
        await File.WriteAllTextAsync(
            Path.Combine(folder, "garden.dripwright.last-edit"),
            "edit 4711 2026-03-01T12:00:00Z\n",
            Stop
        );
        await using var bench = await Bench.Open(folder);
        await using var visit = await chromium.Visit(bench);
        foreach (var address in (string[])["/", "/garden"])
        {
            await visit.Page.GotoAsync(address);
            await Assertions.Expect(visit.Page.Locator("#older")).ToContainTextAsync("4711");
            Assert.Equal("", string.Join("\n", await visit.Axe()));
        }
    }

    [Fact]
    public async Task The_page_says_when_the_last_good_backup_was_made_and_restores_it()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        await Assertions.Expect(page.Locator("#backup-last")).ToContainTextAsync("no good backup yet");
        await page.Locator("#backup-now").ClickAsync();
        await Assertions.Expect(page.Locator("#backup-last")).ToContainTextAsync("0 min ago");
        var rigs = (await bench.Garden.RigsAsync(Stop)).Count;
        await bench.Garden.AddRigAsync("Later", "{}", Stop);
        await page.Locator("#daily summary").ClickAsync();
        await page.Locator("#daily li button").ClickAsync();
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await page.Locator("#restore-do").ClickAsync();
        await Assertions.Expect(page.Locator("#backup-said.good")).ToBeVisibleAsync();
        Assert.Equal(rigs, (await bench.Garden.RigsAsync(Stop)).Count);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_backup_is_downloaded_and_restored()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        var copy = await page.RunAndWaitForDownloadAsync(() => page.Locator("#backup-take").ClickAsync());
        var path = Path.Combine(bench.Folder, "taken.dripwright");
        await copy.SaveAsAsync(path);
        var rigs = (await bench.Garden.RigsAsync(Stop)).Count;
        await bench.Garden.AddRigAsync("Later", "{}", Stop);

        await page.Locator("#restore-file").SetInputFilesAsync(path);
        await page.Locator("#restore-do").ClickAsync();
        await Assertions.Expect(page.Locator("#backup-said")).ToContainTextAsync("kept beside it");
        await Assertions.Expect(page.Locator("#backup-said")).Not.ToContainTextAsync(bench.Folder);
        Assert.Equal(rigs, (await bench.Garden.RigsAsync(Stop)).Count);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_file_that_is_no_backup_is_refused_and_the_garden_stays()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        var bad = new FilePayload
        {
            Name = "bad.dripwright",
            MimeType = "application/octet-stream",
            Buffer = "no garden"u8.ToArray(),
        };
        await Assertions.Expect(page.Locator("#restore-file")).ToBeEnabledAsync();
        await page.Locator("#restore-file").SetInputFilesAsync(bad);
        await page.Locator("#restore-do").ClickAsync();
        await Assertions.Expect(page.Locator("#backup-said.stop")).ToBeVisibleAsync();
        await page.Locator("#import-file").SetInputFilesAsync(bad);
        await Assertions.Expect(page.Locator("#backup-said.stop")).ToBeVisibleAsync();
        Assert.NotEmpty(await bench.Garden.RigsAsync(Stop));
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_garden_exported_is_imported_by_another()
    {
        await using var bench = await Bench.Open();
        await using var other = await Bench.Open(withDemo: false);
        await using var visit = await chromium.Visit(bench);
        await visit.Page.GotoAsync("/garden");
        var file = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Page.Locator("#export").ClickAsync());
        var path = Path.Combine(bench.Folder, "garden.json");
        await file.SaveAsAsync(path);
        await using var there = await chromium.Visit(other);
        await there.Page.GotoAsync("/garden");
        await Assertions.Expect(there.Page.Locator("#import-file")).ToBeEnabledAsync();
        await there.Page.Locator("#import-file").SetInputFilesAsync(path);
        await Assertions.Expect(there.Page.Locator("#backup-said.good")).ToBeVisibleAsync();
        Assert.Equal(
            (await bench.Garden.RigsAsync(Stop)).Select(rig => rig.Name),
            (await other.Garden.RigsAsync(Stop)).Select(rig => rig.Name)
        );
    }

    [Fact]
    public async Task Parts_in_the_shed_are_not_bought_again()
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync("Ten", """{ "rows": [{ "pots": 10 }] }""", Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add: part" }).ClickAsync();
        await page.Locator("#f-onHand-0-part").SelectOptionAsync("pot-square-3-gal");
        await page.Locator("#f-onHand-0-count").FillAsync("7");
        await page.Locator("#onhand-save").ClickAsync();
        await Assertions.Expect(page.Locator(".notice.good")).ToBeVisibleAsync();
        await visit.Rig("parts");
        var line = page.Locator(".parts tbody tr", new() { HasText = "3 gal" }).First;
        await Assertions.Expect(line.Locator("td").Nth(5)).ToHaveTextAsync("7");
        await Assertions.Expect(page.Locator("#parts-total")).ToContainTextAsync(".");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
    }

    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task The_own_catalogue_shows_its_faults_and_is_in_force_when_saved(int width, bool dark)
    {
        await using var bench = await Bench.Open();
        await bench.Garden.RemoveRigAsync((await bench.Garden.RigsAsync(Stop))[0].Id, Stop);
        await using var visit = await chromium.Visit(bench, width, 844, dark);
        var page = visit.Page;
        await page.GotoAsync("/garden");
        await page.Locator("#catalogue-text").FillAsync("""{ "potz": {} }""");
        await page.Locator("#catalogue-text").BlurAsync();
        await Assertions.Expect(page.Locator("#catalogue-faults .fault").First).ToContainTextAsync("potz");
        await page.Locator("#catalogue-save").ClickAsync();
        await Assertions.Expect(page.Locator(".notice.stop")).ToBeVisibleAsync();
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await page.Locator("#catalogue-text").FillAsync("{ }");
        await page.Locator("#catalogue-text").BlurAsync();
        await Assertions.Expect(page.Locator("#catalogue-faults .good")).ToBeVisibleAsync();
        await page.Locator("#catalogue-save").ClickAsync();
        await Assertions.Expect(page.Locator(".notice.good")).ToBeVisibleAsync();
        Assert.Equal(1, (await bench.Garden.CatalogueAsync(Stop)).Revision);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task The_edit_history_says_what_each_step_changed_and_leads_back()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row");
        await page.Locator("#f-rows-0-spacing").FillAsync("9 in");
        await page.Locator("#f-rows-0-spacing").BlurAsync();
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync("Kept as draft");
        await page.GetByRole(AriaRole.Link, new() { Name = "Revisions", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the revision" }).ClickAsync();
        await Assertions.Expect(page.Locator(".titleblock .revision a")).ToContainTextAsync("1, draft");
        await page.Locator("#history-show").ClickAsync();
        await Assertions.Expect(page.Locator("#history > li").First).ToContainTextAsync("row 1, spacing");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await page.Locator("#history button").Last.ClickAsync();
        await Assertions.Expect(page.Locator("#history > li").Last).ToContainTextAsync(Words.Of("history.now"));
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }
}
