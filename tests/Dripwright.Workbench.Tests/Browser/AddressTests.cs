using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>What one looks at stands in the address: reload, Back and a shared link show the same.</summary>
public sealed class AddressTests(Chromium chromium)
{
    private const string TwoRows = """{ "rows": [{ "pots": 6, "count": 2 }] }""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task View_row_and_colour_outlive_a_reload_another_room_and_the_way_back()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Two", TwoRows, Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row", rig.Id);
        await IsSeen(page, "plan");
        await page.GetByRole(AriaRole.Button, new() { Name = "front", Exact = true }).ClickAsync();
        await IsSeen(page, "front");
        await page.Locator("#drawing-row").SelectOptionAsync("2");
        await page.Locator("#drawing-colour").SelectOptionAsync("Flow");
        await Assertions.Expect(page).ToHaveURLAsync(Ends("/row?view=front&row=2&colour=flow"));
        await Assertions.Expect(visit.Drawing).ToContainTextAsync("row 2", new() { IgnoreCase = true });

        await page.ReloadAsync();
        await IsSeen(page, "front");
        await Assertions.Expect(page.Locator("#drawing-row")).ToHaveValueAsync("2");
        await Assertions.Expect(page.Locator("#drawing-colour")).ToHaveValueAsync("Flow");

        await page.GetByRole(AriaRole.Link, new() { Name = "Water", Exact = true }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(Ends("/water?view=front&row=2&colour=flow"));
        await IsSeen(page, "front");

        // Back goes step by step: to the room before, then to the look before.
        await page.GoBackAsync();
        await Assertions.Expect(page).ToHaveURLAsync(Ends("/row?view=front&row=2&colour=flow"));
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("#drawing-colour")).ToHaveValueAsync("None");
        await page.GoBackAsync();
        await page.GoBackAsync();
        await IsSeen(page, "plan");
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Theory]
    [InlineData("row?view=sideways&row=two&colour=red", "plan")]
    [InlineData("row?view=wire", "plan")]
    [InlineData("row?view=front&row=99", "front")]
    [InlineData("crop-wire", "wire")]
    [InlineData("crop-wire?view=end", "end")]
    public async Task A_link_shows_what_it_says_and_a_wrong_word_in_it_is_passed_over(string room, string view)
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Two", TwoRows, Stop);
        await using var visit = await chromium.Visit(bench);
        await visit.Rig(room, rig.Id);
        await IsSeen(visit.Page, view);
        await Assertions.Expect(visit.Page.Locator("#paper > *").First).ToBeVisibleAsync();
        if (view == "front")
        {
            await Assertions.Expect(visit.Page.Locator("#drawing-row")).ToHaveValueAsync("1");
        }

        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    [Fact]
    public async Task A_link_leads_to_one_printed_part_and_to_one_comparison()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Two", TwoRows, Stop);
        await bench.Garden.SaveRevisionAsync(rig.Id, rig.Version, "Ada", "first", Stop);
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("printed?part=X1", rig.Id);
        await Assertions.Expect(page.Locator("#part-title")).ToContainTextAsync("X1", new() { Timeout = 60_000 });
        var other = page.Locator(".pick").Nth(2);
        var number = await other.Locator("b").InnerTextAsync();
        await other.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(Ends($"/printed?part={number}"));
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("#part-title")).ToContainTextAsync("X1");
        await visit.Rig("printed?part=nothing", rig.Id);
        await Assertions.Expect(page.Locator("#part-title")).ToBeVisibleAsync(new() { Timeout = 60_000 });

        await visit.Rig("revisions?revision=1", rig.Id);
        await Assertions.Expect(page.Locator(".compare .pair svg")).ToHaveCountAsync(2);
        await visit.Rig("revisions?revision=7&with=x", rig.Id);
        await Assertions.Expect(page.Locator(".lines li").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".compare")).ToHaveCountAsync(0);
        Assert.Equal(
            "",
            string.Join(
                "\n",
                visit.Complaints.Where(word => !word.Contains("GPU stall", StringComparison.Ordinal)).Distinct()
            )
        );
    }

    private static Regex Ends(string address) =>
        new(Regex.Escape(address) + "$", RegexOptions.None, TimeSpan.FromSeconds(1));

    private static Task IsSeen(IPage page, string view) =>
        Assertions
            .Expect(page.GetByRole(AriaRole.Button, new() { Name = view, Exact = true }))
            .ToHaveAttributeAsync("aria-pressed", "true");
}
