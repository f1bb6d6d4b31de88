using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Tests.Http;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.Tests.SignIn;

/// <summary>Every address against every role.</summary>
public sealed partial class AccessTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_address_stands_in_the_table_and_the_table_names_no_address_that_is_not_there()
    {
        await using var caller = await Caller.Open(network: true);
        var mapped = Mapped(caller).ToList();
        Assert.True(mapped.Count > 90, "Hardly any address was found.");
        Assert.Equal([], mapped.Where(one => one.Needs is null).Select(one => $"{one.Method} {one.Pattern}"));
        var known = mapped.Select(one => $"{one.Method} {one.Pattern}").ToHashSet(StringComparer.OrdinalIgnoreCase);
        Assert.Equal(
            [],
            Access.Addresses.Keys.Where(address =>
                !address.Contains("/_blazor", StringComparison.Ordinal) && !known.Contains(address)
            )
        );

        // Whatever the description tells of is among them.
        await caller.As(Role.Owner, "Ada");
        var described = (await caller.Get("openapi.json")).Json.GetProperty("paths").EnumerateObject().ToList();
        foreach (
            var (path, method) in described.SelectMany(p => p.Value.EnumerateObject().Select(m => (p.Name, m.Name)))
        )
        {
            Assert.Contains(
                mapped,
                one =>
                    one.Method.Equals(method, StringComparison.OrdinalIgnoreCase)
                    && Constraint().Replace(one.Pattern, "}") == path
            );
        }
    }

    [Theory]
    [InlineData(Role.Visitor)]
    [InlineData(Role.Helper)]
    [InlineData(Role.Grower)]
    [InlineData(Role.Owner)]
    public async Task A_key_of_a_role_opens_every_address_of_the_interface_that_the_role_has_and_no_other(Role role)
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        if (role != Role.Owner)
        {
            await caller.As(role, "Bo");
        }

        var (opened, closed) = (0, 0);
        foreach (var one in Mapped(caller).Where(one => one.Pattern.StartsWith("/api/", StringComparison.Ordinal)))
        {
            var may = Access.Has(role, one.Needs!.Value);
            var answer = await caller.Send(
                new HttpMethod(one.Method),
                Filled(one.Pattern),
                one.Method is "GET" or "DELETE" ? null : "{}",
                "*",
                one.Pattern.EndsWith("/garden/restore", StringComparison.Ordinal)
                    ? "application/octet-stream"
                    : "application/json"
            );
            Assert.True(
                may ? answer.Status is not (401 or 403) : answer.Status == 403,
                $"{role} {one}: {answer.Status.ToString(CultureInfo.InvariantCulture)} {answer.Text}"
            );
            (opened, closed) = may ? (opened + 1, closed) : (opened, closed + 1);
        }

        Assert.True(opened > 20, "Hardly any address was tried.");
        Assert.Equal(role == Role.Owner, closed == 0);
    }

    [Fact]
    public async Task Every_page_and_form_is_shown_to_the_roles_that_have_it_and_to_nobody_else()
    {
        await using var caller = await Caller.Open(network: true);
        var by = new Visitor("");
        foreach (var role in Enum.GetValues<Role>().Reverse())
        {
            Assert.Null(await caller.Bench.People.Add($"{role}", role, "six plain tomatoes", by, Stop));
            using var browser = new Browsing(caller.Bench.Url);
            Assert.Equal("/", await browser.Enter($"{role}", "six plain tomatoes"));
            foreach (var one in Mapped(caller).Where(one => one.IsPage && one.Method == "GET"))
            {
                var may = Access.Has(role, one.Needs!.Value);
                var led = await browser.Lead(Filled(one.Pattern));
                Assert.True(may ? led is "200" or "404" : led == "/not-allowed", $"{role} {one}: {led}");
            }

            foreach (
                var one in Mapped(caller).Where(one => one.Pattern.StartsWith("/people/", StringComparison.Ordinal))
            )
            {
                // Without its token: who may do it is told so (400), who may not is turned away before.
                var may = Access.Has(role, one.Needs!.Value);
                Assert.Equal(may ? "400" : "403", await browser.Forge(one.Pattern, ("id", "x"), ("role", "Owner")));
            }
        }
    }

    [Fact]
    public async Task What_stands_in_no_table_is_closed_to_everybody_who_must_sign_in()
    {
        Assert.Null(Access.Of("GET", "/api/v1/marvels"));
        Assert.Null(Access.Of("DELETE", "/api/v1/garden"));
        Assert.All(Enum.GetValues<Right>(), right => Assert.True(Access.Has(Role.Owner, right)));
        Assert.All(Enum.GetValues<GardenAct>(), act => Assert.NotEqual(Right.Look, Access.Of(act)));
        await Task.CompletedTask;
    }

    [Fact]
    public async Task A_key_has_no_more_rights_than_the_person_who_made_it_still_has()
    {
        await using var caller = await Caller.Open(network: true);
        await caller.As(Role.Owner, "Ada");
        await caller.As(Role.Owner, "Bo");
        Assert.Equal(200, (await caller.Get("people")).Status);
        Assert.Null(caller.Bench.People.ChangeRole(caller.Bench.People.Find("Bo")!.Id, Role.Visitor, new Visitor("")));
        (await caller.Get("people")).IsProblem(403);
        Assert.Equal(200, (await caller.Get("rigs")).Status);
        Assert.Null(caller.Bench.People.Remove(caller.Bench.People.Find("Bo")!.Id, new Visitor("")));
        (await caller.Get("rigs")).IsProblem(401);
    }

    /// <summary>The handbook's page of roles is made from the table.</summary>
    [Fact]
    public void The_page_of_roles_is_the_table()
    {
        var page = new StringBuilder(
            """
            # Roles: who may do what

            Made from the table in the program that also opens and closes every address; a test holds the two together. What people are for stands in
            [people](people.md).

            | | visitor | helper | grower | owner |
            |---|---|---|---|---|

            """
        );
        (Right Right, string What)[] rights =
        [
            (Right.Look, "looks at rigs, plans, drawings, steps, revisions, build packs"),
            (Right.Self, "own passphrase, own sessions, signing out"),
            (Right.Help, "counts parts on hand, has setups suggested, has files of their own planned"),
            (Right.Edit, "changes rigs, catalogue, settings; bin; import, export, backups"),
            (Right.Rule, "people, keys, sign-ins; restores a backup; empties the bin"),
        ];
        Assert.Equal(Enum.GetValues<Right>().Except([Right.Open]).Order(), rights.Select(one => one.Right).Order());
        foreach (var (right, what) in rights)
        {
            var marks = Enum.GetValues<Role>().Select(role => Access.Has(role, right) ? "yes" : "");
            page.Append(CultureInfo.InvariantCulture, $"| {what} | {string.Join(" | ", marks)} |\n");
        }

        page.Append(
            "\n## Every address\n\nFor a page it is what may be opened; what is done on it takes the right of what is done.\n"
        );
        foreach (var group in Access.Addresses.OrderBy(one => one.Value).GroupBy(one => Who(one.Value)))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n### For: {group.Key}\n\n");
            foreach (
                var address in group
                    .Select(one => one.Key)
                    .Where(one => !one.Contains("/_blazor", StringComparison.Ordinal))
            )
            {
                page.Append(CultureInfo.InvariantCulture, $"- `{Constraint().Replace(address, "}")}`\n");
            }
        }

        CommittedText.Is("docs/handbook/roles.md", page.ToString());
    }

    private static string Who(Right right) =>
        right == Right.Open
            ? "everybody, without signing in"
            : string.Join(
                ", ",
                Enum.GetValues<Role>().Where(role => Access.Has(role, right)).Select(role => Words.Of($"role.{role}"))
            );

    [GeneratedRegex(":[^}]+}", RegexOptions.None, 1000)]
    private static partial Regex Constraint();

    [GeneratedRegex(@"\{[^}]+\}", RegexOptions.None, 1000)]
    private static partial Regex Hole();

    // An address that fits, of something that is not there.
    private static string Filled(string pattern) =>
        Hole()
            .Replace(
                pattern,
                hole =>
                    hole.Value.EndsWith(":int}", StringComparison.OrdinalIgnoreCase) ? "999999"
                    : hole.Value == "{documentName}" ? "v1"
                    : hole.Value == "{Room}" ? "row"
                    : hole.Value.StartsWith("{kind", StringComparison.Ordinal) ? "csv"
                    : "none"
            );

    private static IEnumerable<Address> Mapped(Caller caller) =>
        caller
            .Bench.App.Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint =>
            {
                var isPage = endpoint.Metadata.GetMetadata<ComponentTypeMetadata>() is not null;
                var methods = isPage
                    ? ["GET"]
                    : endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["GET"];
                return methods
                    .Where(method => method != "HEAD")
                    .Select(method => new Address(
                        method,
                        "/" + endpoint.RoutePattern.RawText!.Trim('/'),
                        isPage,
                        Access.Of(endpoint, method)
                    ));
            })
            .DistinctBy(one => (one.Method, one.Pattern));

    private sealed record Address(string Method, string Pattern, bool IsPage, Right? Needs);
}
