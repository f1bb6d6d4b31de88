using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>From a brief to a rig in the garden.</summary>
public sealed class ProposeTests(Chromium chromium)
{
    /// <summary>A small room and many emitters: few rigs to try, so that the whole search takes a moment only.</summary>
    internal const string FewRigs = """
        { "site": { "roomLength": "8 ft", "roomWidth": "4 ft" }, "crops": [{ "crop": "basil", "plants": 2 }], "leastEmitters": 6 }
        """;

    [Fact]
    public async Task A_brief_gives_rigs_cheapest_first_and_the_one_taken_lies_in_the_garden()
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddDocumentAsync("brief", "Brief", FewRigs, TestContext.Current.CancellationToken);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.GotoAsync("/propose");
        await page.Locator("#f-crops-0-plants").FillAsync("2");
        await page.Locator("#f-site-roomLength").FillAsync("12 foots");
        await Assertions.Expect(page.Locator(".field.faulty .fault")).ToContainTextAsync("12 foots");
        await page.Locator(".brief .main").ClickAsync();
        await Assertions.Expect(page.Locator("#f-site-roomLength")).ToBeFocusedAsync();
        await page.Locator("#f-site-roomLength").FillAsync("8 ft");
        await page.Locator(".brief .main").ClickAsync();
        await page.Locator(".proposals li").First.WaitForAsync(new() { Timeout = 180_000 });
        Assert.Equal("", string.Join("\n", await visit.Axe()));

        var rigs = await page.Locator(".proposals li").CountAsync();
        Assert.Equal(rigs, await page.Locator(".front .point").CountAsync());
        await page.Locator(".front .point").Last.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".proposals li").Last).ToBeFocusedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Use this one: setup 1", Exact = true }).ClickAsync();
        await page.Locator(".titleblock").WaitForAsync();
        await visit.Drawing.WaitForAsync();
        var rig = Assert.Single(await bench.Garden.RigsAsync(TestContext.Current.CancellationToken));
        Assert.EndsWith(" 1", rig.Name, StringComparison.Ordinal);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));

        // What was answered is there again.
        await page.GotoAsync("/propose");
        await Assertions.Expect(page.Locator("#f-site-roomLength")).ToHaveValueAsync("8 ft");
    }

    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task A_search_can_be_stopped_with_the_best_so_far_kept(int width, bool dark)
    {
        await using var bench = await Bench.Open(withDemo: false);
        await using var visit = await chromium.Visit(bench, width, 844, dark);
        var page = visit.Page;
        await page.GotoAsync("/propose");
        // So many rigs fit this room that the search takes a minute and more.
        await page.Locator("#f-crops-0-plants").FillAsync("24");
        await page.Locator("#f-site-roomLength").FillAsync("60 ft");
        await page.Locator("#f-site-roomWidth").FillAsync("40 ft");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await page.Locator(".brief .main").ClickAsync();
        await page.Locator("#propose-stop").ClickAsync();
        await Assertions.Expect(page.Locator("#propose-stopped")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }
}
