using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Extending;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Tests.Browser;
using Dripwright.Workbench.Tests.Work;
using Dripwright.Workbench.Work;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Editing;

/// <summary>The drawing comes first, the strength of the stand after it: nothing that needs it may be said in between.</summary>
public sealed class OpenStandTests(Chromium chromium)
{
    private const string Ten = """{ "rows": [{ "pots": 10 }] }""";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task While_the_stand_is_open_the_plan_says_nothing_of_it_and_what_is_taken_away_has_it()
    {
        await using var bench = await Bench.Open(withDemo: false);
        var rig = await bench.Garden.AddRigAsync("Ten", Ten, Stop);
        using var host = new WorkHost(new WorkLimits { Pages = new("pages", 1, 9, TimeSpan.FromMinutes(1)) });
        using var gate = new ManualResetEventSlim();
        var held = Hold(host, gate);
        await using var desk = (
            await RigDesk.Open(bench.Garden, Works.Of(host), rig.Id, null, TimeSpan.FromMinutes(1))
        )!;
        var isOpen = new TaskCompletionSource();
        desk.Changed += (_, _) =>
        {
            if (desk.IsStandOpen)
            {
                isOpen.TrySetResult();
            }
        };
        var planned = desk.Replan();
        await isOpen.Task.WaitAsync(Stop);
        var open = desk.Plan!;
        Assert.Null(open.Stand);
        Assert.DoesNotContain(PlanSummary.Of(open).Groups, group => group.Subject is FigureSubject.Stand);
        Assert.False(desk.IsStale);

        // What is taken away meanwhile is the plan as if it were made in one go, and the text that it is of.
        var taken = desk.Whole(Stop);
        gate.Set();
        await held;
        var (whole, text) = (await taken)!.Value;
        Assert.Equal(Ten, text);
        Assert.Equal(PlanJson.Write(AtOnce(Ten)), PlanJson.Write(whole));
        await planned;
        Assert.False(desk.IsStandOpen);
        Assert.NotNull(desk.Plan!.Stand);
        Assert.Contains(PlanSummary.Of(desk.Plan).Groups, group => group.Subject is FigureSubject.Stand);
    }

    [Fact]
    public async Task What_to_buy_counts_the_joints_as_the_stands_ask_for_them()
    {
        using var host = new WorkHost();
        var work = Works.Of(host);
        const string Tall = """{ "stand": { "bracing": "none" }, "rows": [{ "pots": 30, "standHeight": "40 in" }] }""";
        var (before, after) = (await Drawn(work, Ten), await Drawn(work, Tall));
        var steps = await work.Expand(before, after, Stop);
        var whole = Expansion.Of(Planner.Completed(before, Fast), Planner.Completed(after, Fast));
        Assert.Equal(Told(whole), Told(steps));
        Assert.NotEqual(Told(Expansion.Of(before, after)), Told(steps));
    }

    [Fact]
    public async Task While_the_stand_is_open_the_pages_that_need_it_wait_and_say_so()
    {
        await using var bench = await Bench.Open();
        var host = bench.App.Services.GetRequiredService<WorkHost>();
        using var gate = new ManualResetEventSlim();
        Task[] held = [.. Enumerable.Range(0, host.Limits.Pages.AtOnce).Select(_ => Hold(host, gate))];
        await using var visit = await chromium.Visit(bench, 390, 844);
        var page = visit.Page;
        await visit.Rig("parts");
        await Assertions.Expect(page.Locator(".parts .notice.care")).ToHaveTextAsync(Words.Of("parts.open"));
        await Assertions.Expect(page.Locator("#findings")).ToContainTextAsync(Words.Of("findings.open"));
        await Assertions.Expect(page.Locator(".verdict")).ToContainTextAsync(Words.Of("verdict.stand"));
        await page.Locator("a[href$='/printed']").ClickAsync();
        await Assertions.Expect(page.Locator(".printed .pick")).ToHaveCountAsync(0);
        await page.Locator("a[href$='/pack']").ClickAsync();
        await Assertions.Expect(page.Locator(".pack")).ToContainTextAsync(Words.Of("pack.drawing"));
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        gate.Set();
        await Task.WhenAll(held);
        await page.Locator(".sheetview svg").WaitForAsync();
        await Assertions.Expect(page.Locator(".verdict:is(.good, .mend)")).ToBeVisibleAsync();
        Assert.True(visit.Complaints.Count == 0, string.Join("\n", visit.Complaints.Distinct()));
    }

    private static PlanOptions Fast => new() { Draws = 0 };

    private static IEnumerable<object> Told(Expansion steps) =>
        steps.Buy.Select(line => (object)(line.Part, line.Note, line.Needed, line.OnHand, line.Buy));

    private static async Task<Plan> Drawn(PageWork work, string text) =>
        (await work.Draw(text, "rig", PartsCatalogue.Default, [], null, Stop)).Plan!;

    private static Plan AtOnce(string text)
    {
        var reading = RigReader.Read(text, "Ten", PartsCatalogue.Default);
        var options = new PlanOptions { Draws = SpreadDraws.For(10) };
        return Planner.Of(reading.Rig!, reading.Assumed, PartsCatalogue.Default, options);
    }

    /// <summary>Takes a turn of what may come later, until the gate is opened.</summary>
    private static Task<int> Hold(WorkHost host, ManualResetEventSlim gate) =>
        host.Run(
            host.Limits.Pages,
            ServedGarden.Only,
            stop =>
            {
                gate.Wait(stop);
                return 0;
            },
            Stop
        );
}
