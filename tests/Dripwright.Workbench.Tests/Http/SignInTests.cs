using System.Net;
using System.Text.RegularExpressions;

namespace Dripwright.Workbench.Tests.Http;

public sealed partial class SignInTests
{
    private const string Passphrase = "six plain tomatoes";

    [Fact]
    public async Task Open_to_the_network_nothing_of_the_garden_is_shown_to_who_has_not_signed_in()
    {
        await using var caller = await Caller.Open(network: true);
        var api = (await caller.Get("rigs")).IsProblem(401);
        Assert.Contains("Bearer", api.Headers["WWW-Authenticate"], StringComparison.Ordinal);
        (await caller.Post("check", Caller.TenPots)).IsProblem(401);
        (await caller.Get("openapi.json")).IsProblem(401);
        foreach (var page in (string[])["/", "/rigs/1", "/people", "/methods/pump"])
        {
            var answer = await caller.Get(page);
            Assert.Equal(302, answer.Status);
            Assert.EndsWith("/sign-in", answer.Headers["Location"], StringComparison.Ordinal);
        }

        Assert.Equal(401, (await caller.Post("/_blazor/negotiate?negotiateVersion=1", "")).Status);
        Assert.Equal(401, (await caller.Get("/downloads/00/x.zip")).Status);
        Assert.Equal(200, (await caller.Get("/sign-in")).Status);
    }

    [Fact]
    public async Task A_code_lets_one_person_in_and_a_key_made_on_the_page_opens_the_interface()
    {
        await using var caller = await Caller.Open(network: true);
        using var browser = new Browsing(caller.Bench.Url);
        var code = WorkbenchHost.CodeForNewPerson(caller.Bench.App)!;
        Assert.Contains(
            "said=code",
            await browser.Post("/sign-in", "join", ("name", "Ada"), ("code", "WRONG"), ("passphrase", Passphrase)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "said=short",
            await browser.Post("/sign-in", "join", ("name", "Ada"), ("code", code), ("passphrase", "short")),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "/",
            await browser.Post("/sign-in", "join", ("name", "Ada"), ("code", code), ("passphrase", Passphrase))
        );
        Assert.Equal(HttpStatusCode.OK, (await browser.Get("/")).Status);
        Assert.Null(WorkbenchHost.CodeForNewPerson(caller.Bench.App));

        // The same code does not work twice.
        using var other = new Browsing(caller.Bench.Url);
        Assert.Contains(
            "said=code",
            await other.Post("/sign-in", "join", ("name", "Bo"), ("code", code), ("passphrase", Passphrase)),
            StringComparison.Ordinal
        );

        await browser.Post("/people", "keys", ("label", "shed"), ("role", "Owner"), ("days", "30"));
        var key = KeyText().Match((await browser.Get("/people")).Text).Value;
        Assert.NotEmpty(key);
        Assert.Empty(KeyText().Match((await browser.Get("/people")).Text).Value);
        caller.Client.DefaultRequestHeaders.Add("Authorization", $"Bearer {key}");
        var (id, tag) = await caller.Add("Bench");
        var saved = await caller.Post($"rigs/{id}/revisions", """{ "who": "Somebody else" }""", tag);
        Assert.Equal("Ada (shed)", saved.Json.GetProperty("who").GetString());
        // A key opens the interface, not the pages.
        Assert.Equal(302, (await caller.Get("/")).Status);
        var kept = await File.ReadAllTextAsync(
            Path.Combine(caller.Bench.Folder, "people.json"),
            TestContext.Current.CancellationToken
        );
        Assert.DoesNotContain(key, kept, StringComparison.Ordinal);
        Assert.DoesNotContain(Passphrase, kept, StringComparison.Ordinal);

        // Signing out everywhere ends the session.
        using var twice = new Browsing(caller.Bench.Url);
        Assert.Equal("/", await twice.Post("/sign-in", "enter", ("name", "ada"), ("passphrase", Passphrase)));
        await twice.Post("/people", "leave", ("everywhere", "true"));
        Assert.Equal(HttpStatusCode.Found, (await browser.Get("/")).Status);
    }

    [Fact]
    public async Task After_five_wrong_passphrases_the_right_one_does_not_help_for_a_while_and_ten_tries_are_all()
    {
        await using var caller = await Caller.Open(network: true);
        using var browser = new Browsing(caller.Bench.Url);
        var code = WorkbenchHost.CodeForNewPerson(caller.Bench.App)!;
        await browser.Post("/sign-in", "join", ("name", "Ada"), ("code", code), ("passphrase", Passphrase));
        using var thief = new Browsing(caller.Bench.Url);
        for (var i = 0; i < 5; i++)
        {
            Assert.Contains(
                "said=wrong",
                await thief.Post("/sign-in", "enter", ("name", "Ada"), ("passphrase", "a guess")),
                StringComparison.Ordinal
            );
        }

        Assert.Contains(
            "said=wrong",
            await thief.Post("/sign-in", "enter", ("name", "Ada"), ("passphrase", Passphrase)),
            StringComparison.Ordinal
        );
        for (var i = 0; i < 4; i++)
        {
            await thief.Post("/sign-in", "enter", ("name", "Nobody"), ("passphrase", "a guess"));
        }

        Assert.Equal("429", await thief.Post("/sign-in", "enter", ("name", "Ada"), ("passphrase", Passphrase)));
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        await using var caller = await Caller.Open(network: true);
        var code = WorkbenchHost.CodeForNewPerson(caller.Bench.App)!;
        var body = $"name=Ada&code={code}&passphrase={Uri.EscapeDataString(Passphrase)}";
        var forged = await caller.Send(
            HttpMethod.Post,
            "/sign-in/join",
            body,
            null,
            "application/x-www-form-urlencoded"
        );
        Assert.Equal(400, forged.Status);
        using var browser = new Browsing(caller.Bench.Url);
        await browser.Post("/sign-in", "join", ("name", "Ada"), ("code", code), ("passphrase", Passphrase));
        string[] forms =
        [
            "invite",
            "add",
            "role",
            "passphrase",
            "passphrase/set",
            "remove",
            "sessions/end",
            "keys",
            "keys/drop",
            "leave",
        ];
        foreach (var form in forms)
        {
            Assert.Equal("400", await browser.Forge($"/people/{form}", ("label", "x"), ("id", "x"), ("role", "Owner")));
        }
    }

    [GeneratedRegex("drip_[0-9a-f]{64}", RegexOptions.None, 1000)]
    private static partial Regex KeyText();
}
