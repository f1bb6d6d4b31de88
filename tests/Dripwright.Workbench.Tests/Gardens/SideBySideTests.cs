using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Workbench.Files;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Browser;
using Dripwright.Workbench.Tests.Http;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Gardens;

/// <summary>Several gardens can stand on one server: each request and each page knows its own, and nothing of another.</summary>
public sealed class SideBySideTests(Chromium chromium) : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-two-").FullName;
    private WebApplication? _app;
    private TwoGardens? _gardens;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Garden Ours => _gardens!.All[0].Garden;

    private Garden Theirs => _gardens!.All[1].Garden;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        if (_app is not null)
        {
            await _app.StopAsync(CancellationToken.None);
            await _app.DisposeAsync();
        }

        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Neither_sees_the_rigs_drafts_settings_and_catalogue_of_the_other()
    {
        await Open();
        using var ours = Client(TwoGardens.Ours);
        using var theirs = Client(TwoGardens.Theirs);
        var added = await Send(ours, HttpMethod.Post, "rigs?name=Ours", Caller.TenPots);
        Assert.Equal(HttpStatusCode.Created, added.Status);
        var id = added.Json.GetProperty("id").GetInt32();

        Assert.Equal(0, (await Send(theirs, HttpMethod.Get, "rigs")).Json.GetArrayLength());
        Assert.Equal(HttpStatusCode.NotFound, (await Send(theirs, HttpMethod.Get, $"rigs/{id}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await Send(theirs, HttpMethod.Get, $"rigs/{id}/plan")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await Send(theirs, HttpMethod.Delete, $"rigs/{id}")).Status);

        // The same number in the other garden is another rig.
        var other = await Theirs.AddRigAsync("Theirs", """{ "rows": [{ "pots": 3 }] }""", Stop);
        Assert.Equal(id, other.Id);
        Assert.Contains("10", (await Send(ours, HttpMethod.Get, $"rigs/{id}")).Text, StringComparison.Ordinal);
        Assert.Contains("3", (await Send(theirs, HttpMethod.Get, $"rigs/{id}")).Text, StringComparison.Ordinal);
        await Send(ours, HttpMethod.Patch, "garden", """{ "name": "Ours alone" }""");
        Assert.NotEqual("Ours alone", (await Theirs.SettingsAsync(Stop)).Name);

        // Who says no garden, or one that is not here, gets none.
        using var nobody = Client("nowhere");
        Assert.Equal(HttpStatusCode.NotFound, (await Send(nobody, HttpMethod.Get, "rigs")).Status);
    }

    [Fact]
    public async Task Neither_is_given_the_downloads_and_kept_plans_of_the_other()
    {
        await Open();
        using var ours = Client(TwoGardens.Ours);
        using var theirs = Client(TwoGardens.Theirs);
        var key = _app!
            .Services.GetRequiredService<WaitingFiles>()
            .Add(TwoGardens.Ours, "my.txt", "text/plain", "ours"u8.ToArray());
        Assert.Equal("ours", await ours.GetStringAsync($"/downloads/{key}/my.txt", Stop));
        using var refused = await theirs.GetAsync($"/downloads/{key}/my.txt", Stop);
        Assert.Equal(HttpStatusCode.NotFound, refused.StatusCode);

        await Send(ours, HttpMethod.Post, "plan?draws=false", Caller.TenPots);
        var kept = _app.Services.GetRequiredService<KeptPlans>();
        var catalogue = (await Ours.CatalogueAsync(Stop)).Catalogue;
        var file = new RigSource("rig file", Caller.TenPots);
        Assert.NotNull(kept.Find(TwoGardens.Ours, file, catalogue, false));
        Assert.Null(kept.Find(TwoGardens.Theirs, file, catalogue, false));
    }

    [Fact]
    public async Task A_garden_that_fills_the_waiting_files_loses_its_own_and_not_those_of_the_other()
    {
        var files = new WaitingFiles();
        var theirs = files.Add(TwoGardens.Theirs, "small", "text/plain", new byte[1000]);
        List<string> ours = [];
        for (var i = 0; i < 5; i++)
        {
            ours.Add(files.Add(TwoGardens.Ours, "large", "text/plain", new byte[60 << 20]));
        }

        Assert.NotNull(files.Find(TwoGardens.Theirs, theirs));
        Assert.Null(files.Find(TwoGardens.Ours, ours[0]));
        Assert.NotNull(files.Find(TwoGardens.Ours, ours[^1]));
        await Task.CompletedTask;
    }

    [Fact]
    public async Task Who_may_come_into_one_may_not_come_into_the_other()
    {
        await Open(network: true);
        var people = _gardens!.All[0].People;
        var nobody = new Visitor("");
        Assert.Null(await people.Add("Ada", Role.Owner, "six plain tomatoes", nobody, Stop));
        var key = people.MakeKey(people.Find("Ada")!.Id, "shed", Role.Owner, 30, nobody).Key;
        Assert.True(_gardens.All[1].People.IsEmpty);
        foreach (var (garden, expected) in new[] { (TwoGardens.Ours, 200), (TwoGardens.Theirs, 401) })
        {
            using var client = Client(garden);
            client.DefaultRequestHeaders.Add("Authorization", $"Bearer {key}");
            Assert.Equal(expected, (int)(await Send(client, HttpMethod.Get, "rigs")).Status);
        }

        // A session of one garden opens no page of the other.
        await using var visit = await chromium.Visit(_app!.Urls.First());
        await Choose(visit, TwoGardens.Ours);
        await visit.Page.GotoAsync("/sign-in");
        await visit.Page.Locator("#enter-name").FillAsync("Ada");
        await visit.Page.Locator("#enter-passphrase").FillAsync("six plain tomatoes");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.Locator("#new-rig").WaitForAsync();
        await Choose(visit, TwoGardens.Theirs);
        await visit.Page.GotoAsync("/");
        await visit.Page.Locator("#join-code").WaitForAsync();
        Assert.EndsWith("/sign-in", visit.Page.Url, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_stays_in_the_garden_that_it_was_opened_in()
    {
        await Open();
        var rig = await Ours.AddRigAsync("Ours", Caller.TenPots, Stop);
        var same = await Theirs.AddRigAsync("Theirs", """{ "rows": [{ "pots": 3 }] }""", Stop);
        // The same number in both: only the garden tells them apart.
        Assert.Equal(rig.Id, same.Id);
        var address = string.Create(CultureInfo.InvariantCulture, $"/rigs/{rig.Id}/row");
        await using var visit = await chromium.Visit(_app!.Urls.First());
        await Choose(visit, TwoGardens.Theirs);
        await using var other = await visit.Beside();
        await other.Page.GotoAsync(address);
        await Assertions.Expect(other.Page.Locator("#paper [data-pot]")).ToHaveCountAsync(3);
        await Choose(visit, TwoGardens.Ours);
        await visit.Page.GotoAsync("/");
        await Assertions.Expect(visit.Page.Locator("a.rig")).ToHaveCountAsync(1);
        await Assertions.Expect(visit.Page.Locator("a.rig")).ToContainTextAsync("Ours");
        await visit.Page.GotoAsync(address);
        await Assertions.Expect(visit.Page.Locator("#paper [data-pot]")).ToHaveCountAsync(10);

        await visit.Page.Locator("#f-rows-0-pots").FillAsync("12");
        await visit.Page.Locator("#f-rows-0-pots").BlurAsync();
        await Assertions.Expect(visit.Page.Locator("#paper [data-pot]")).ToHaveCountAsync(12);
        await Assertions.Expect(visit.Page.Locator(".kept")).ToHaveTextAsync(Words.Of("kept.draft"));
        await other.Page.Locator("#f-rows-0-pots").FillAsync("5");
        await other.Page.Locator("#f-rows-0-pots").BlurAsync();
        await Assertions.Expect(other.Page.Locator("#paper [data-pot]")).ToHaveCountAsync(5);
        await Assertions.Expect(other.Page.Locator(".kept")).ToHaveTextAsync(Words.Of("kept.draft"));
        Assert.Contains("12", (await Ours.DraftAsync(rig.Id, Stop))!.Text, StringComparison.Ordinal);
        Assert.Contains("5", (await Theirs.DraftAsync(rig.Id, Stop))!.Text, StringComparison.Ordinal);
        Assert.Equal("", string.Join("\n", visit.Complaints.Distinct()));
    }

    private static Task Choose(Visit visit, string garden) =>
        visit.Page.Context.AddCookiesAsync([
            new()
            {
                Name = TwoGardens.Cookie,
                Value = garden,
                Domain = "127.0.0.1",
                Path = "/",
            },
        ]);

    private async Task Open(bool network = false) => (_app, _gardens) = await TwoGardens.Open(_folder, network);

    private HttpClient Client(string garden)
    {
        var client = new HttpClient { BaseAddress = new Uri(_app!.Urls.First()) };
        client.DefaultRequestHeaders.Add(TwoGardens.Header, garden);
        return client;
    }

    private static async Task<(HttpStatusCode Status, string Text, JsonElement Json)> Send(
        HttpClient client,
        HttpMethod method,
        string address,
        string? body = null
    )
    {
        using var request = new HttpRequestMessage(method, $"{Caller.Api}/{address}");
        if (body is not null)
        {
            request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        }

        using var answer = await client.SendAsync(request, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        return (
            answer.StatusCode,
            text,
            text.StartsWith('{') || text.StartsWith('[') ? JsonDocument.Parse(text).RootElement : default
        );
    }
}
