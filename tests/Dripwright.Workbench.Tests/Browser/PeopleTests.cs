using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>Nobody is shut out: by colour, by width, or by having no mouse.</summary>
public sealed class PeopleTests(Chromium chromium)
{
    [Theory]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(390, false)]
    [InlineData(390, true)]
    public async Task No_page_shuts_anyone_out_or_scrolls_sideways(int width, bool dark)
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, width, 844, dark);
        var page = visit.Page;
        await page.GotoAsync("/");
        await page.Locator("a.rig").First.WaitForAsync();
        await Judge(visit, "rigs", width);
        await page.GotoAsync("/garden");
        await page.Locator("#onhand-save").WaitForAsync();
        await Judge(visit, "garden", width);
        await page.GotoAsync("/propose");
        await page.Locator(".brief").WaitForAsync();
        await Judge(visit, "propose", width);
        await page.GotoAsync("/methods");
        await Judge(visit, "methods", width);
        await page.GotoAsync("/methods/drain-water-surface");
        await Judge(visit, "a method", width);
        foreach (var stage in Dripwright.Workbench.Editing.Stage.All)
        {
            await visit.Rig(stage.Key);
            await page.Locator(
                    stage.Key == "pack" ? ".sheetview svg"
                    : stage.Key == "overhead" ? "#paper > *"
                    : stage.Key == "printed" ? ".facts dl"
                    : stage.Fields.Count > 0 ? "#paper svg"
                    : ".wide"
                )
                .WaitForAsync();
            await Judge(visit, stage.Key, width);
        }

        await page.GotoAsync("/no-such-page");
        await Judge(visit, "not there", width, complaints: false);
    }

    [Fact]
    public async Task Signing_in_goes_by_keyboard_alone_and_its_pages_shut_nobody_out()
    {
        await using var bench = await Bench.Open(withDemo: false, network: true);
        var code = WorkbenchHost.CodeForNewPerson(bench.App)!;
        await using var wide = await chromium.Visit(bench);
        var page = wide.Page;
        await page.GotoAsync("/");
        await page.Locator("#join-code").FocusAsync();
        await Join("WRONG");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("code is not right");
        await Judge(wide, "sign in, refused", 1280);
        await page.Locator("#join-code").FocusAsync();
        await Join(code);
        await page.Locator("a[href='/people']").ClickAsync();
        await page.Locator("#key-label").FillAsync("shed");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("drip_");
        await Judge(wide, "people", 1280);

        await using var narrow = await chromium.Visit(bench, 390, 844, dark: true);
        await narrow.Page.GotoAsync("/rigs/1");
        await narrow.Page.Locator("#enter-name").WaitForAsync();
        await Judge(narrow, "sign in", 390);
        await narrow.Page.Locator("#enter-name").FillAsync("Ada");
        await narrow.Page.Locator("#enter-passphrase").FillAsync("six plain tomatoes");
        await narrow.Page.Keyboard.PressAsync("Enter");
        await narrow.Page.Locator("a[href='/people']").ClickAsync();
        await narrow.Page.Locator("#key-label").FillAsync("barn");
        await narrow.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(narrow.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("drip_");
        await Judge(narrow, "people", 390);

        async Task Join(string said)
        {
            await page.Keyboard.TypeAsync(said);
            await page.Keyboard.PressAsync("Tab");
            await page.Keyboard.TypeAsync("Ada");
            await page.Keyboard.PressAsync("Tab");
            await page.Keyboard.TypeAsync("six plain tomatoes");
            await page.Keyboard.PressAsync("Enter");
        }
    }

    [Fact]
    public async Task A_pot_is_emptied_with_the_keyboard_alone()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        await page.Locator("#paper [data-part='pot-1-1']").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("Enter");
        var panel = page.Locator("#pot-panel");
        await Assertions.Expect(panel).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.Locator("#pot-planted")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Space");
        await Assertions.Expect(page.Locator("#pot-planted")).Not.ToBeCheckedAsync();
        await Assertions.Expect(page.Locator("#pot-crop")).ToHaveCountAsync(0);
        Assert.Equal("", string.Join("\n", await visit.Axe()));
    }

    [Fact]
    public async Task On_a_phone_the_drawing_folds_to_a_strip_and_opens_with_one_tap()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, 390, 844);
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        var fold = visit.Page.Locator(".fold");
        await fold.TapAsync();
        await Assertions.Expect(visit.Drawing).ToBeHiddenAsync();
        var strip = await visit.Page.Locator("#drawing").BoundingBoxAsync();
        Assert.True(strip!.Height < 80, "The strip is too high.");
        await fold.TapAsync();
        await Assertions.Expect(visit.Drawing).ToBeVisibleAsync();
    }

    private static async Task Judge(Visit visit, string where, int width, bool complaints = true)
    {
        Assert.Equal("", string.Join("\n", (await visit.Axe()).Select(violation => $"{where}: {violation}")));
        var wide = await visit.Page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.True(
            wide <= width,
            $"{where} is {wide.ToString(System.Globalization.CultureInfo.InvariantCulture)} px wide."
        );
        if (complaints)
        {
            Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
        }
    }
}
