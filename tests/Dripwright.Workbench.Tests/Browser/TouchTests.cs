using System.Globalization;
using Dripwright.Language;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>What a tap hits, what the page shows of it, and what lies under its end.</summary>
public sealed class TouchTests(Chromium chromium)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1280, 900)]
    [InlineData(390, 844)]
    public async Task A_click_on_any_pot_opens_its_panel_and_stays_in_the_room(int width, int height)
    {
        await using var bench = await Bench.Open(withDemo: false);
        await using var visit = await chromium.Visit(bench, width, height);
        var page = visit.Page;
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        await page.GotoAsync("/");
        await page.Locator("#new-pots").FillAsync("8");
        await page.Locator("form[aria-labelledby='new-rig'] button.main").ClickAsync();
        await page.Locator(".titleblock").WaitForAsync();
        await visit.Rig("row", (await bench.Garden.RigsAsync(Stop))[0].Id);
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(8);
        await Assertions.Expect(page.Locator(".verdict:is(.good, .mend, .stop)")).ToBeVisibleAsync();
        var address = page.Url;
        for (var pot = 1; pot <= 8; pot++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"pot-1-{pot}");
            await page.EvaluateAsync("() => scrollTo(0, 0)");
            // Where a finger would go: on the middle of the pot, whatever is drawn over it.
            var box = (await page.Locator($"#paper [data-part='{name}'] > :first-child").BoundingBoxAsync())!;
            await page.Mouse.ClickAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
            await Assertions.Expect(page.Locator("#pot-title")).ToHaveTextAsync(Words.Of("pot.title", 1, pot));
            Assert.Equal(address, page.Url);
        }

        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_tap_on_a_pipe_tells_what_it_is_where_one_is_and_going_to_its_field_is_a_choice()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Ten", """{ "rows": [{ "pots": 10 }] }""", Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row", rig.Id);
        await visit.Drawing.WaitForAsync();
        await page.Locator("#paper [data-part='reservoir']").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#part-panel")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("#part-panel")).ToContainTextAsync("Reservoir");
        Assert.EndsWith("/row", page.Url, StringComparison.Ordinal);
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await page.Locator("#part-panel button").First.ClickAsync();
        await Assertions.Expect(page.Locator("#f-reservoir-tank")).ToBeFocusedAsync();
        Assert.EndsWith("/water", page.Url, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1280, 900)]
    [InlineData(390, 844)]
    public async Task No_room_ends_in_blank_paper_below_what_it_shows(int width, int height)
    {
        // How far the page goes on below its last piece.
        const string Blank = """
            () => document.documentElement.scrollHeight - Math.max(innerHeight, ...[...document.querySelectorAll(".bench, .page")].map(one => Math.ceil(one.getBoundingClientRect().bottom + scrollY)))
            """;
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, width, height);
        foreach (var stage in Dripwright.Workbench.Editing.Stage.All)
        {
            await visit.Rig(stage.Key);
            await Assertions
                .Expect(visit.Page.Locator(".verdict:is(.good, .mend, .stop)"))
                .ToBeVisibleAsync(new() { Timeout = 60_000 });
            var blank = await visit.Page.EvaluateAsync<double>(Blank);
            Assert.True(blank <= 2, string.Create(CultureInfo.InvariantCulture, $"{stage.Key}: {blank} px"));
        }
    }

    [Fact]
    public async Task Where_one_is_has_not_the_colour_of_a_stop()
    {
        await using var bench = await Bench.Open();
        foreach (var dark in (bool[])[false, true])
        {
            await using var visit = await chromium.Visit(bench, dark: dark);
            var page = visit.Page;
            await visit.Rig("row");
            await visit.Drawing.WaitForAsync();
            await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
            var stop = await page.EvaluateAsync<string>(
                "() => { const one = document.body.appendChild(document.createElement('i')); one.style.color = 'var(--stop)'; return getComputedStyle(one).color; }"
            );
            await page.Locator("#f-rows-0-pots").FocusAsync();
            Assert.NotEqual(
                stop,
                await page.EvaluateAsync<string>("() => getComputedStyle(document.activeElement).outlineColor")
            );
            await page.Locator("#paper [data-part='pot-1-1']").FocusAsync();
            await page.Keyboard.PressAsync("ArrowRight");
            Assert.NotEqual(
                stop,
                await page.EvaluateAsync<string>(
                    "() => getComputedStyle(document.activeElement.firstElementChild).stroke"
                )
            );
        }
    }

    [Fact]
    public async Task The_solid_shown_is_that_of_the_part_picked_however_late_its_script_comes()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Ten", """{ "rows": [{ "pots": 10 }] }""", Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await page.RouteAsync(
            "**/TurnedPart.razor.js",
            async route =>
            {
                await Task.Delay(1500, Stop);
                await route.ContinueAsync();
            }
        );
        await visit.Rig("printed", rig.Id);
        await page.Locator(".pick").Nth(2).WaitForAsync(new() { Timeout = 60_000 });
        for (var i = 0; i < 3; i++)
        {
            await page.Locator(".pick").Nth(i).ClickAsync();
        }

        var number = await page.Locator(".pick").Nth(2).Locator("b").InnerTextAsync();
        await Assertions.Expect(page.Locator("#part-title")).ToContainTextAsync(number);
        await Assertions.Expect(page.Locator("#part-3d")).ToHaveAttributeAsync("data-part", number);
        await page.WaitForTimeoutAsync(500);
        await Assertions.Expect(page.Locator("#part-3d")).ToHaveAttributeAsync("data-part", number);
    }
}
