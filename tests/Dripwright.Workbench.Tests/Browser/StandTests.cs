using System.IO.Compression;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>What holds the rows and what hangs over them.</summary>
public sealed class StandTests(Chromium chromium)
{
    [Fact]
    public async Task A_printed_part_is_turned_with_the_keys_and_taken_as_3mf_and_stl()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("printed");
        var canvas = page.Locator("#part-3d");
        await Assertions.Expect(canvas).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("#part-still")).ToHaveCountAsync(0);
        await canvas.FocusAsync();
        var before = await canvas.GetAttributeAsync("data-turned");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("+");
        Assert.NotEqual(before, await canvas.GetAttributeAsync("data-turned"));
        await page.Locator(".pick").Last.ClickAsync();
        await Assertions.Expect(page.Locator(".pick").Last).ToHaveAttributeAsync("aria-pressed", "true");
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is { } folder)
        {
            Directory.CreateDirectory(folder);
            await page.WaitForTimeoutAsync(1000);
            await page.ScreenshotAsync(new() { Path = $"{folder}/printed.png", FullPage = true });
        }

        Assert.Equal("", string.Join("\n", await visit.Axe()));

        var stl = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "STL", Exact = true }).ClickAsync()
        );
        Assert.True(new FileInfo(await stl.PathAsync()).Length > 1000);
        var all = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "Download all as one 3MF" }).ClickAsync()
        );
        await using var zip = await ZipFile.OpenReadAsync(await all.PathAsync(), TestContext.Current.CancellationToken);
        Assert.NotNull(zip.GetEntry("3D/3dmodel.model"));
        Assert.Equal(
            "",
            string.Join(
                "\n",
                visit.Complaints.Where(word => !word.Contains("GPU stall", StringComparison.Ordinal)).Distinct()
            )
        );
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_small_part_is_looked_at_first_and_then_printed_for_the_rig(int width)
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Bare",
            """{ "rows": [{ "pots": 6 }] }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench, width, 844);
        var page = visit.Page;
        await visit.Rig("printed");
        var rest = page.Locator(".pick:has(b:text-is('A1'))");
        await Assertions.Expect(rest).ToContainTextAsync("not in the rig", new() { Timeout = 60_000 });
        await rest.ClickAsync();
        await Assertions.Expect(page.Locator("#part-title")).ToHaveTextAsync("A1: line rest");
        await Assertions.Expect(page.Locator(".facts figure svg")).ToBeVisibleAsync();
        Assert.Equal("", string.Join("\n", await visit.Axe()));

        await page.Locator("#printed-offer button").ClickAsync();

        await Assertions.Expect(page.Locator("#printed-offer")).ToHaveCountAsync(0);
        await Assertions.Expect(rest).ToContainTextAsync("× 6");
        await Assertions.Expect(rest).ToHaveAttributeAsync("aria-pressed", "true");
        await page.Locator("#f-printing-smallParts-rimThickness").FillAsync("90 mm");
        await page.Locator("#f-printing-smallParts-rimThickness").BlurAsync();
        await Assertions.Expect(page.Locator(".facts .fault")).ToContainTextAsync("90 mm");
        await page.Locator("#f-printing-smallParts-rimThickness").FillAsync("3 mm");
        await page.Locator("#f-printing-smallParts-rimThickness").BlurAsync();
        await Assertions.Expect(page.Locator(".facts .fault")).ToHaveCountAsync(0);
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await visit.Rig("parts");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Printed rest for the feed line");
        Assert.Equal(
            "",
            string.Join(
                "\n",
                visit.Complaints.Where(word => !word.Contains("GPU stall", StringComparison.Ordinal)).Distinct()
            )
        );
    }

    [Fact]
    public async Task Where_the_browser_has_no_3d_a_still_picture_stands()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, 390, 844);
        var page = visit.Page;
        await page.AddInitScriptAsync("HTMLCanvasElement.prototype.getContext = () => null;");
        await visit.Rig("printed");
        await Assertions
            .Expect(page.Locator("#turn-help"))
            .ToContainTextAsync("still picture", new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("#part-still svg")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#part-3d")).ToBeHiddenAsync();
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 390);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task The_wire_is_drawn_with_its_pull_and_the_stand_told_with_its_loads_each_beside_its_caution()
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Vines",
            """{ "rows": [{ "pots": 10 }] }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("crop-wire");
        await Assertions.Expect(page.Locator("#paper .empty")).ToBeVisibleAsync();
        await page.Locator("#f-cropWire-wire").SelectOptionAsync(new SelectOptionValue { Index = 2 });
        await Assertions.Expect(page.Locator("#paper svg")).ToContainTextAsync("sags");
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is { } folder)
        {
            Directory.CreateDirectory(folder);
            await page.ScreenshotAsync(new() { Path = $"{folder}/wire.png" });
        }

        await Assertions.Expect(page.Locator("#wire-caution")).ToContainTextAsync("professional");
        await Assertions.Expect(page.Locator(".figures")).ToContainTextAsync("Each end is pulled with");
        Assert.Equal("", string.Join("\n", await visit.Axe()));

        // What holds the rows stands a room away: loads with their factors, and what each tube bears.
        await visit.Rig("stand");
        var stands = page.Locator(".stands");
        await Assertions
            .Expect(stands.Locator(".weakest"))
            .ToContainTextAsync("of its limit", new() { Timeout = 30_000 });
        await Assertions.Expect(stands.Locator("tr.governs")).ToHaveCountAsync(1);
        await Assertions.Expect(stands).ToContainTextAsync("North Carolina State extension");
        await Assertions.Expect(page.Locator("#stands-caution")).ToContainTextAsync("Local codes decide");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task The_feed_shows_each_element_against_its_target(int width, bool dark)
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Fed",
            """
            { "rows": [{ "pots": 10, "planting": [{ "crop": "tomato" }] }],
              "nutrients": { "mixing": "cans", "rawCoir": true, "acid": "nitric-acid-60",
                "water": { "alkalinity": "2 meq/L", "calcium": "40 mg/L" } } }
            """,
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench, width, 844, dark);
        var page = visit.Page;
        await visit.Rig("nutrients");
        await Assertions.Expect(page.Locator(".mixresult .empty")).ToBeVisibleAsync();
        await page.Locator("#f-nutrients-crop").SelectOptionAsync("tomato");
        await Assertions.Expect(page.Locator(".elements li").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".mixresult")).ToContainTextAsync("dS/m");
        await Assertions.Expect(page.Locator("#can-B")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".mixresult")).ToContainTextAsync("First buffer the coir");
        await Assertions.Expect(page.Locator(".weeks svg")).ToHaveCountAsync(3);
        await page.Locator("#weeks-way").SelectOptionAsync("0");
        await Assertions.Expect(page.Locator("#plot-weeks-elements")).ToContainTextAsync("water only");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is { } folder)
        {
            Directory.CreateDirectory(folder);
            await page.ScreenshotAsync(
                new() { Path = $"{folder}/fed-{(dark ? "dark" : "light")}.png", FullPage = true }
            );
        }

        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }
}
