using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Http;

namespace Dripwright.Workbench.Tests.SignIn;

/// <summary>People, sessions and keys as other programs see them, and what is written down of the door.</summary>
public sealed class PeopleOverHttpTests
{
    private const string Good = "six plain tomatoes";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task People_are_added_changed_and_removed_and_the_last_owner_stays()
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        var added = await caller.Post(
            "people",
            """{ "name": "Bo", "role": "grower", "passphrase": "lamp ladder onion" }"""
        );
        Assert.Equal(201, added.Status);
        Assert.DoesNotContain("lamp", added.Text, StringComparison.Ordinal);
        var bo = added.Json.GetProperty("id").GetString();
        Assert.Contains(
            "fifteen",
            (await caller.Post("people", """{ "name": "Cy", "passphrase": "short" }""")).IsProblem(422).Text,
            StringComparison.Ordinal
        );
        (await caller.Post("people", """{ "name": "bO", "passphrase": "lamp ladder onion" }""")).IsProblem(422);
        Assert.Equal(204, (await caller.Send(HttpMethod.Patch, $"people/{bo}", """{ "role": "helper" }""")).Status);
        Assert.Equal(Role.Helper, caller.Bench.People.Find("Bo")!.Role);
        var ada = caller.Bench.People.Find("Ada")!.Id;
        (await caller.Send(HttpMethod.Patch, $"people/{ada}", """{ "role": "grower" }""")).IsProblem(422);
        (await caller.Send(HttpMethod.Delete, $"people/{ada}")).IsProblem(422);
        using var browser = new Browsing(caller.Bench.Url);
        Assert.Equal("/", await browser.Enter("Bo", "lamp ladder onion"));
        var session = Assert.Single((await caller.Get("sessions")).Json.EnumerateArray());
        Assert.Equal("Bo", session.GetProperty("name").GetString());
        Assert.Equal("127.0.0.1", session.GetProperty("from").GetString());
        Assert.Equal(
            204,
            (
                await caller.Send(
                    HttpMethod.Put,
                    $"people/{bo}/passphrase",
                    """{ "passphrase": "onion ladder lamp" }"""
                )
            ).Status
        );
        Assert.Equal("/sign-in", await browser.Lead("/"));
        Assert.Equal("/", await browser.Enter("Bo", "onion ladder lamp"));
        Assert.Equal(204, (await caller.Send(HttpMethod.Delete, $"people/{bo}")).Status);
        Assert.Equal("/sign-in", await browser.Lead("/"));
        (await caller.Send(HttpMethod.Delete, $"people/{bo}")).IsProblem(404);
        Assert.Equal(
            "Ada",
            Assert.Single((await caller.Get("people")).Json.EnumerateArray()).GetProperty("name").GetString()
        );
    }

    [Fact]
    public async Task A_key_is_shown_once_ends_on_its_day_and_when_it_is_ended()
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        var made = await caller.Post("keys", """{ "name": "shed", "role": "visitor", "days": 10 }""");
        Assert.Equal(201, made.Status);
        var key = made.Json.GetProperty("key").GetString()!;
        (await caller.Post("keys", """{ "name": "shed", "days": 367 }""")).IsProblem(422);
        var listed = await caller.Get("keys");
        Assert.DoesNotContain(key, listed.Text, StringComparison.Ordinal);
        var shed = listed.Json.EnumerateArray().Single(one => one.GetProperty("name").GetString() == "shed");
        Assert.Equal("visitor", shed.GetProperty("role").GetString());
        var owner = caller.Client.DefaultRequestHeaders.Authorization!.Parameter!;
        caller.Send(key);
        Assert.Equal(200, (await caller.Get("rigs")).Status);
        (await caller.Post("rigs?name=x", Caller.TenPots)).IsProblem(403);
        Assert.Equal("Ada (shed)", (await caller.Get("me")).Json.GetProperty("name").GetString());
        caller.Send(owner);
        Assert.Equal(204, (await caller.Send(HttpMethod.Delete, $"keys/{shed.GetProperty("id").GetString()}")).Status);
        caller.Send(key);
        (await caller.Get("rigs")).IsProblem(401);
    }

    [Fact]
    public async Task A_key_opens_nothing_from_its_last_day_on()
    {
        var folder = Directory.CreateTempSubdirectory("dripwright-keys-").FullName;
        using (var people = new People(folder, TimeProvider.System))
        using (var later = new People(folder, new Later()))
        {
            var by = new Visitor("");
            Assert.Null(await people.Add("Ada", Role.Owner, Good, by, Stop));
            var key = people.MakeKey(people.Find("Ada")!.Id, "shed", Role.Owner, 10, by).Key!;
            Assert.NotNull(people.OfKey(key));
            Assert.NotNull(people.RoleOfKey(people.OfKey(key)!.Value.Key.Id));
            Assert.Null(later.OfKey(key));
            Assert.Null(later.RoleOfKey(people.OfKey(key)!.Value.Key.Id));
        }

        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task What_happens_at_the_door_is_written_down_for_the_owner_and_no_secret_ever_is()
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        using var browser = new Browsing(caller.Bench.Url);
        await browser.Enter("Ada", "a wrong secret one");
        // A passphrase typed where the name belongs.
        await browser.Enter(Good, "Ada");
        await browser.Enter("Ada", Good);
        await browser.Post("/people", "leave", ("everywhere", "false"));
        using var guess = new HttpRequestMessage(HttpMethod.Get, $"{Caller.Api}/rigs");
        guess.Headers.Add("Authorization", "Bearer drip_guessed");
        using (await new HttpClient { BaseAddress = new Uri(caller.Bench.Url) }.SendAsync(guess, Stop)) { }
        var lines = (await caller.Get("sign-ins")).Json.EnumerateArray().ToList();
        var what = lines.ConvertAll(line => line.GetProperty("what").GetString());
        Assert.Equal(["wrongKey", "out", "in", "wrong", "wrong", "key", "added"], what);
        Assert.Equal(
            ["", "Ada", "Ada", "", "Ada", "Ada", "Ada"],
            lines.ConvertAll(line => line.GetProperty("name").GetString())
        );
        foreach (var file in Directory.GetFiles(caller.Bench.Folder, "*", SearchOption.TopDirectoryOnly))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
            var text = await reader.ReadToEndAsync(Stop);
            foreach (var secret in new[] { Good, "a wrong secret one", "guessed" })
            {
                Assert.DoesNotContain(secret, text, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task Steps_and_rigs_say_who_made_them()
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        var (id, tag) = await caller.Add("Bench");
        await caller.As(Role.Grower, "Bo");
        Assert.Equal(200, (await caller.Send(HttpMethod.Put, $"rigs/{id}", Caller.TenPots + " ", tag)).Status);
        var steps = (await caller.Get($"rigs/{id}/steps"))
            .Json.EnumerateArray()
            .Select(step => step.GetProperty("who").GetString());
        Assert.Equal(["Bo (test)", "Ada (test)"], steps);
        Assert.Equal(
            "Bo (test)",
            Assert.Single((await caller.Get("rigs")).Json.EnumerateArray()).GetProperty("changedBy").GetString()
        );
    }

    [Fact]
    public async Task Where_nobody_is_asked_who_they_are_nobody_makes_people()
    {
        await using var caller = await Caller.Open();
        Assert.Contains(
            "people",
            (await caller.Post("people", """{ "name": "Eve", "role": "owner", "passphrase": "lamp ladder onion" }"""))
                .IsProblem(403)
                .Text,
            StringComparison.Ordinal
        );
        (await caller.Get("people")).IsProblem(403);
        Assert.False(File.Exists(Path.Combine(caller.Bench.Folder, PeopleFile.FileName)));
    }

    [Fact]
    public async Task One_address_holds_only_so_many_connections_and_the_rest_are_let_go()
    {
        await using var caller = await Caller.Open();
        var place = new Uri(caller.Bench.Url);
        List<System.Net.Sockets.TcpClient> open = [];
        try
        {
            for (var i = 0; i < AddressLimit.Most; i++)
            {
                var one = new System.Net.Sockets.TcpClient();
                await one.ConnectAsync(place.Host, place.Port, Stop);
                open.Add(one);
            }

            // One more is closed without an answer.
            using var more = new System.Net.Sockets.TcpClient();
            await more.ConnectAsync(place.Host, place.Port, Stop);
            Assert.Equal(0, await Read(more));
        }
        finally
        {
            open.ForEach(one => one.Dispose());
        }

        var until = DateTime.UtcNow.AddSeconds(20);
        while (true)
        {
            try
            {
                Assert.Equal(200, (await caller.Get("rigs")).Status);
                break;
            }
            catch (HttpRequestException) when (DateTime.UtcNow < until)
            {
                await Task.Delay(100, Stop);
            }
        }
    }

    private static async Task<int> Read(System.Net.Sockets.TcpClient one)
    {
        try
        {
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(Stop);
            patience.CancelAfter(TimeSpan.FromSeconds(10));
            return await one.GetStream().ReadAsync(new byte[1], patience.Token);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private sealed class Later : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => base.GetUtcNow().AddDays(10);
    }
}
