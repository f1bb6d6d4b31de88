using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>The page for the one who stands at the tank.</summary>
public sealed class TankTests(Chromium chromium)
{
    [Theory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task A_reading_becomes_steps_and_two_readings_a_top_up(int width, bool dark)
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Tank",
            """{ "rows": [{ "pots": 10, "planting": [{ "crop": "tomato" }] }], "nutrients": { "crop": "tomato", "pureShare": "100 %" } }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench, width, 844, dark);
        var page = visit.Page;
        await visit.Rig("adjust");
        var mend = page.Locator("section[aria-labelledby='mend-title']");
        Assert.Equal("ec", await page.Locator("#ask-meter").InputValueAsync());
        await page.Locator("#ask-meter").SelectOptionAsync("ppm500");
        await mend.Locator("#ask-ec").FillAsync("700");
        await mend.Locator("#ask-ph").FillAsync("6..4");
        await mend.Locator("#ask-volume").FillAsync("20 gal");
        await mend.Locator("#ask-days").FillAsync("30");
        await mend.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(mend.Locator("#ask-ph-fault")).ToContainTextAsync("6.4");
        await mend.Locator("#ask-ph").FillAsync("6.4");
        await mend.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(mend.Locator("ol.steps > li").First).ToBeVisibleAsync();
        await Assertions.Expect(mend.Locator(".weigh").First).ToContainTextAsync("g of");
        await Assertions.Expect(mend).ToContainTextAsync("Balance:");

        var two = page.Locator("section[aria-labelledby='two-title']");
        await two.Locator("#ask-firstEc").FillAsync("950");
        await two.Locator("#ask-firstVolume").FillAsync("30 gal");
        await two.Locator("#ask-secondEc").FillAsync("1050");
        await two.Locator("#ask-secondVolume").FillAsync("20 gal");
        await two.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(two.Locator(".steps")).ToContainTextAsync("the plants took");
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        if (Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is { } folder)
        {
            Directory.CreateDirectory(folder);
            await page.ScreenshotAsync(
                new() { Path = $"{folder}/tank-{(dark ? "dark" : "light")}.png", FullPage = true }
            );
        }

        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    /// <summary>A milligram more or less is worth telling where there is a tenth of a gram.</summary>
    [Fact]
    public async Task What_there_is_of_a_trace_salt_is_told_as_finely_as_the_scale_weighs()
    {
        await using var bench = await Bench.Open(withDemo: false);
        await bench.Garden.AddRigAsync(
            "Traces",
            """{ "rows": [{ "pots": 10 }], "nutrients": { "crop": "tomato", "pureShare": "100 %", "scaleStep": "0.001 g" } }""",
            TestContext.Current.CancellationToken
        );
        await using var visit = await chromium.Visit(bench);
        await visit.Rig("nutrients");
        var boron = visit.Page.Locator(".mixresult tr", new() { HasText = "Boric acid" }).Locator("td.num").Last;
        Assert.Matches(@"^0\.\d\d[1-9] g$", await boron.InnerTextAsync());
    }
}
