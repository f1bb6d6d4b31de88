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
        var rig = (await bench.Garden.RigsAsync(TestContext.Current.CancellationToken))[^1].Id;
        foreach (var (n, stage) in Dripwright.Workbench.Editing.Stage.All.Index())
        {
            // Every other room in one width and colour, the rest in the other: each is judged in both widths and both colours.
            if (!Trials.AreLong && n % 2 == (width < 1000 == dark ? 1 : 0))
            {
                continue;
            }
            await visit.Rig(stage.Key, rig);
            await page.Locator(
                    stage.Key == "pack" ? ".sheetview svg"
                    : stage.Key == "crop-wire" ? "#paper > *"
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

    [Theory]
    [InlineData("/rigs/0/row", 1280, "Tab")]
    [InlineData("/rigs/0/row", 390, "Shift+Tab")]
    [InlineData("/propose", 1280, "Tab")]
    public async Task Tab_leads_through_all_of_a_page_and_where_one_is_can_always_be_seen(
        string address,
        int width,
        string key
    )
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, width, 844);
        var page = visit.Page;
        // Scrolling that takes its time would be looked at half-way.
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        if (address.StartsWith("/rigs/", StringComparison.Ordinal))
        {
            await visit.Rig(address.Split('/')[^1]);
        }
        else
        {
            await page.GotoAsync(address);
        }

        await page.Locator(
                address.StartsWith("/rigs", StringComparison.Ordinal) ? ".verdict.good, .verdict.mend" : "main h2"
            )
            .First.WaitForAsync();
        List<string> unseen = [];
        HashSet<string> reached = [];
        for (var i = 0; i < 400; i++)
        {
            await page.Keyboard.PressAsync(key);
            if (await page.EvaluateAsync<string?>(WhereItIs) is not { } where)
            {
                break;
            }

            reached.Add(where.Split(": ")[0]);
            if (!where.EndsWith(": seen", StringComparison.Ordinal))
            {
                unseen.Add(where);
            }
        }

        Assert.True(unseen.Count == 0, string.Join("\n", unseen));
        if (address.EndsWith("/row", StringComparison.Ordinal))
        {
            Assert.Superset(new HashSet<string>(["f-rows-0-pots", "f-rows-0-spacing", "Water", "front"]), reached);
            // The drawing is one stop, whatever it holds: from part to part lead the arrow keys.
            Assert.Single(reached, name => name.StartsWith("plan-", StringComparison.Ordinal));
        }
    }

    /// <summary>Name of the element in focus, and whether it is marked and nothing lies over it; null at the end of the page.</summary>
    private const string WhereItIs = """
        () => {
          const at = document.activeElement;
          if (!at || at === document.body) return null;
          const name = at.id || at.dataset.part || at.innerText?.trim().slice(0, 40) || at.getAttribute("aria-label");
          const style = getComputedStyle(at);
          const isMarked = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 || at.closest("svg") && parseFloat(getComputedStyle(at.firstElementChild).strokeWidth) >= 1.1;
          const box = at.getBoundingClientRect();
          const within = (low, high, most) => Math.max(Math.max(low, 1), Math.min((Math.max(low, 0) + Math.min(high, most)) / 2, most - 1));
          const top = document.elementFromPoint(within(box.left, box.right, innerWidth), within(box.top, box.bottom, innerHeight));
          const isOver = top && (at.contains(top) || top.contains(at) || at.closest("label")?.contains(top) || at.closest("svg")?.contains(top));
          return `${name}: ${isMarked ? "" : "not marked "}${isOver ? "" : "covered by " + (top?.className || top?.tagName)}`.trim().replace(/:$/, ": seen");
        }
        """;

    [Fact]
    public async Task Who_asks_for_less_motion_sees_none()
    {
        const string Moving = """
            () => [...document.querySelectorAll("*")].filter(one => {
              const style = getComputedStyle(one);
              return style.transitionDuration.split(",").some(time => parseFloat(time) > 0) || style.animationName !== "none" || style.scrollBehavior === "smooth";
            }).length + document.getAnimations().length
            """;
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        Assert.NotEqual(0, await page.EvaluateAsync<int>(Moving));
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        Assert.Equal(0, await page.EvaluateAsync<int>(Moving));

        // Nor is what an edit changed marked for a moment and then let go.
        await page.EvaluateAsync(
            """
            () => new MutationObserver(all => all.forEach(one => one.target.matches?.(".added, .moved, .changed") && (document.title = "moved")))
              .observe(document.body, { subtree: true, attributes: true, attributeFilter: ["class"] })
            """
        );
        await page.Locator("#f-rows-0-pots").FillAsync("11");
        await page.Locator("#f-rows-0-pots").BlurAsync();
        await Assertions.Expect(page.Locator("#paper [data-pot]")).ToHaveCountAsync(23);
        await Assertions.Expect(page.Locator(".verdict:is(.good, .mend, .stop)")).ToBeVisibleAsync();
        Assert.NotEqual("moved", await page.TitleAsync());
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

    internal static async Task Judge(Visit visit, string where, int width, bool complaints = true)
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
