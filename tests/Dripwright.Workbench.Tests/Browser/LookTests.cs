using System.Globalization;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>Pictures of the main pages, for people to look at. Made only where a folder for them is named.</summary>
public sealed class LookTests(Chromium chromium)
{
    [Fact]
    public async Task Pictures_of_the_pages_are_made_where_a_folder_is_named()
    {
        var folder = Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES");
        Assert.SkipWhen(folder is null, "DRIPWRIGHT_PICTURES names no folder.");
        Directory.CreateDirectory(folder);
        await using var bench = await Bench.Open();
        foreach (var (width, height) in new[] { (1280, 900), (390, 844) })
        {
            foreach (var dark in new[] { false, true })
            {
                await using var visit = await chromium.Visit(bench, width, height, dark);
                var look = width.ToString(CultureInfo.InvariantCulture) + (dark ? "-dark" : "");
                await visit.Page.GotoAsync("/");
                await visit.Page.Locator("a.rig").First.WaitForAsync();
                await visit.Page.WaitForTimeoutAsync(500);
                await visit.Page.ScreenshotAsync(new() { Path = $"{folder}/rigs-{look}.png", FullPage = true });
                foreach (var place in new[] { "garden", "propose" })
                {
                    await visit.Page.GotoAsync("/" + place);
                    await visit.Page.WaitForTimeoutAsync(1500);
                    await visit.Page.ScreenshotAsync(new() { Path = $"{folder}/{place}-{look}.png", FullPage = true });
                }

                await visit.Page.GotoAsync("/methods/drain-water-surface");
                await visit.Page.ScreenshotAsync(new() { Path = $"{folder}/method-{look}.png" });
                foreach (
                    var room in new[]
                    {
                        "site",
                        "row",
                        "stand",
                        "water",
                        "feed",
                        "tank",
                        "overhead",
                        "parts",
                        "printed",
                        "pack",
                        "revisions",
                        "file",
                    }
                )
                {
                    await visit.Rig(room);
                    if (room is "printed")
                    {
                        await visit.Page.Locator(".facts svg").WaitForAsync(new() { Timeout = 60_000 });
                    }

                    await visit.Page.WaitForTimeoutAsync(1800);
                    await visit.Page.ScreenshotAsync(new() { Path = $"{folder}/{room}-{look}.png" });
                    if (room is "water" or "parts" or "printed" or "feed")
                    {
                        await visit.Page.ScreenshotAsync(
                            new() { Path = $"{folder}/{room}-{look}-full.png", FullPage = true }
                        );
                    }
                }
            }
        }
    }
}
