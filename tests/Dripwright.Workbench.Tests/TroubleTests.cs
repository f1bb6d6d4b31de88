using System.Globalization;
using System.Text.RegularExpressions;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Tests.Browser;
using Microsoft.AspNetCore.Http;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests;

/// <summary>When something fails there is one clear page, with a number under which the log tells the whole story.</summary>
public sealed partial class TroubleTests(Chromium chromium)
{
    private const string Close = "export function close() {";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_request_that_fails_gives_a_page_with_a_number_that_stands_in_the_log()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-log-").FullName;
        var page = await Failed(folder);
        Assert.Contains(Number(page), await Log(folder), StringComparison.Ordinal);
        Assert.Contains("broken <on purpose>", await Log(folder), StringComparison.Ordinal);
        Assert.DoesNotContain("on purpose", page, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("/garden", TroubleKind.ConnectionLost, 503)]
    [InlineData("/api/v1/rigs", TroubleKind.ConnectionLost, 503)]
    [InlineData("/api/v1/rigs", TroubleKind.NoServer, 503)]
    [InlineData("/garden", TroubleKind.Busy, 503)]
    [InlineData("/garden", TroubleKind.Damaged, 500)]
    public async Task A_garden_that_cannot_be_reached_just_now_is_told_as_such_without_a_path_of_the_server(
        string address,
        TroubleKind kind,
        int status
    )
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-log-").FullName;
        var (context, said) = await Answer(
            folder,
            address,
            new GardenException(kind, "/srv/yard/garden: wait.", null, "The garden: wait.")
        );
        Assert.Equal(status, context.Response.StatusCode);
        Assert.Equal(status == 503 ? "10" : "", context.Response.Headers.RetryAfter.ToString());
        Assert.Contains("The garden: wait.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("/srv", said, StringComparison.Ordinal);
        Assert.Contains("/srv/yard", await Log(folder), StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_page_that_fails_shows_a_number_that_stands_in_the_log_and_shuts_nobody_out()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench, 390, 844);
        var page = visit.Page;
        // The browser refuses to tell what was chosen before.
        await page.AddInitScriptAsync("Storage.prototype.getItem = () => { throw new Error('broken on purpose') }");
        var id = (await bench.Garden.RigsAsync(Stop))[0].Id;
        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"/rigs/{id}/row"));
        await page.GetByRole(AriaRole.Heading, new() { Name = Words.Of("trouble.title") }).WaitForAsync();
        var said = await page.Locator("main").InnerTextAsync();
        Assert.Contains($"Trouble {Number(said)}", await Log(bench.Folder), StringComparison.Ordinal);
        Assert.DoesNotContain("on purpose", said, StringComparison.Ordinal);
        Assert.Equal("", string.Join("\n", await visit.Axe()));
    }

    [Fact]
    public async Task A_page_that_breaks_down_says_under_which_number_the_log_tells_of_it()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await BreakOnLeaving(page);
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        await page.Locator(".titleblock .rig a").ClickAsync();
        var bar = page.Locator("#blazor-error-ui");
        await bar.WaitForAsync();
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        var number = PageNumber().Match(await bar.InnerTextAsync()).Groups["number"].Value;
        Assert.Equal(10, number.Length);
        Assert.Contains(number, await Log(bench.Folder), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_kept_stays_on_the_page_with_a_number_and_is_kept_later()
    {
        await using var bench = await Bench.Open();
        await using var visit = await chromium.Visit(bench);
        var page = visit.Page;
        await visit.Rig("row");
        await visit.Drawing.WaitForAsync();
        var id = int.Parse(page.Url.Split('/')[^2], CultureInfo.InvariantCulture);
        await Sql(bench, """ALTER TABLE "steps" RENAME TO "gone" """);
        var spacing = page.Locator("#f-rows-0-spacing");
        await spacing.FillAsync("9 in");
        var notice = page.Locator(".notice.stop[role=alert]");
        await notice.WaitForAsync();
        Assert.Contains(
            $"Trouble {Number(await notice.InnerTextAsync())}",
            await Log(bench.Folder),
            StringComparison.Ordinal
        );
        Assert.Equal("", string.Join("\n", await visit.Axe()));
        await Sql(bench, """ALTER TABLE "gone" RENAME TO "steps" """);
        await spacing.FillAsync("9.5 in");
        await Assertions.Expect(page.Locator(".kept")).ToHaveTextAsync("Kept as draft");
        await Assertions.Expect(notice).ToHaveCountAsync(0);
        Assert.Contains("9.5 in", (await bench.Garden.DraftAsync(id, Stop))!.Text, StringComparison.Ordinal);
    }

    /// <summary>The page that a request gets whose handling throws.</summary>
    internal static async Task<string> Failed(string folder)
    {
        var (context, page) = await Answer(folder, "/garden", new InvalidOperationException("broken <on purpose>"));
        Assert.Equal(500, context.Response.StatusCode);
        return page;
    }

    private static async Task<(HttpContext Context, string Text)> Answer(string folder, string address, Exception why)
    {
        using var log = LoggerFactory.Create(to => to.AddProvider(new LogFile(Path.Combine(folder, LogFile.Name))));
        using var body = new MemoryStream();
        await using var services = new ServiceCollection().AddLogging().AddProblemDetails().BuildServiceProvider();
        var context = new DefaultHttpContext
        {
            Request = { Path = address },
            Response = { Body = body },
            RequestServices = services,
        };
        await new Trouble(_ => throw why, log.CreateLogger<Trouble>()).Invoke(context);
        return (context, System.Text.Encoding.UTF8.GetString(body.ToArray()));
    }

    /// <summary>Has the page fail when a rig's page is left, where no net holds it any more.</summary>
    internal static Task BreakOnLeaving(IPage page) =>
        page.RouteAsync(
            "**/RigDrawing.razor.js",
            async route =>
            {
                var script = await (await route.FetchAsync()).TextAsync();
                await route.FulfillAsync(
                    new()
                    {
                        ContentType = "text/javascript",
                        Body = script.Replace(Close, Close + " throw new Error('broken');", StringComparison.Ordinal),
                    }
                );
            }
        );

    private static Task<string> Log(string folder) => File.ReadAllTextAsync(Path.Combine(folder, LogFile.Name), Stop);

    private static string Number(string text)
    {
        var found = Numbered().Match(text);
        Assert.True(found.Success, text);
        return found.Value;
    }

    private static async Task Sql(Bench bench, string change)
    {
        await using var connection = new SqliteConnection(
            $"Data Source={Path.Combine(bench.Folder, "garden.dripwright")};Pooling=False"
        );
        await connection.OpenAsync(Stop);
        await using var command = connection.CreateCommand();
        command.CommandText = change;
        await command.ExecuteNonQueryAsync(Stop);
    }

    [GeneratedRegex("[0-9]{6}-[0-9]{3}", RegexOptions.None, 1000)]
    private static partial Regex Numbered();

    [GeneratedRegex("Number (?<number>[A-Za-z0-9_-]+):", RegexOptions.None, 1000)]
    private static partial Regex PageNumber();
}
