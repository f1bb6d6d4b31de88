using System.Security.Claims;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Setup;
using Dripwright.Workbench.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The people of the garden: what the page does, for other programs. Who may do what stands in <see cref="Access"/>.</summary>
internal static class PeopleAddresses
{
    private const string Json = "application/json";

    public static void Map(RouteGroupBuilder api)
    {
        var people = api.MapGroup("").WithTags("People, sessions and keys").AddEndpointFilter(Asked);
        MapMe(people);
        MapPeople(people);
        MapSessions(people);
        MapKeys(people);
    }

    private static void MapMe(RouteGroupBuilder api)
    {
        api.MapGet(
                "/me",
                (HttpContext c, GardenOfRequest h) =>
                    Results.Ok(new MeAnswer(c.User.Identity?.Name ?? "", h.Actor.Role))
            )
            .WithName("Me")
            .WithSummary("Who is asking, and as what")
            .Produces<MeAnswer>();
        api.MapPut("/me/passphrase", ChangeOwn)
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<OwnPassphrase>(Json)
            .RequireRateLimiting(Rates.SignIn)
            .WithName("ChangeOwnPassphrase")
            .WithSummary("Changes one's own passphrase; one's sessions elsewhere end")
            .Produces(204)
            .ProducesProblem(422);
        api.MapGet(
                "/me/sessions",
                (HttpContext c, GardenOfRequest h) =>
                    Results.Ok(Me(c, h) is { } me ? SessionAnswer.Of(me).ToList() : [])
            )
            .WithName("OwnSessions")
            .WithSummary("Where one is signed in")
            .Produces<IReadOnlyList<SessionAnswer>>();
        api.MapDelete(
                "/me/sessions",
                (HttpContext c, GardenOfRequest h) =>
                {
                    h.People.EndSessions(MyId(c), Door.VisitorOf(c));
                    return Results.NoContent();
                }
            )
            .WithName("EndOwnSessions")
            .WithSummary("Signs one out everywhere")
            .Produces(204);
        api.MapDelete(
                "/me/sessions/{id}",
                (HttpContext c, GardenOfRequest h, string id) =>
                    Came(h.People.EndSession(id, Door.VisitorOf(c), MyId(c)))
            )
            .WithName("EndOwnSession")
            .WithSummary("Ends one of one's own sessions")
            .Produces(204)
            .ProducesProblem(404);
    }

    private static void MapPeople(RouteGroupBuilder api)
    {
        api.MapGet("/people", (GardenOfRequest h) => Results.Ok(h.People.All.Select(PersonAnswer.Of).ToList()))
            .WithName("People")
            .WithSummary("Who may come in, and as what")
            .Produces<IReadOnlyList<PersonAnswer>>();
        api.MapPost("/people", Add)
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewPerson>(Json)
            .WithName("AddPerson")
            .WithSummary("Adds somebody with a first passphrase")
            .Produces<PersonAnswer>(201)
            .ProducesProblem(422);
        api.MapPost(
                "/people/codes",
                (HttpContext c, GardenOfRequest h, NewRole wanted) =>
                    Results.Ok(new CodeAnswer(h.People.NewCode(wanted.Role ?? Role.Helper, Door.VisitorOf(c))))
            )
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewRole>(Json)
            .WithName("MakeCode")
            .WithSummary("A code with which one new person makes an account of that role, once, within a day")
            .Produces<CodeAnswer>();
        api.MapPatch(
                "/people/{id}",
                (HttpContext c, GardenOfRequest h, string id, NewRole wanted) =>
                    Came(wanted.Role is { } role ? h.People.ChangeRole(id, role, Door.VisitorOf(c)) : "no-role")
            )
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewRole>(Json)
            .WithName("ChangeRole")
            .WithSummary("Gives somebody another role; the last owner stays one")
            .Produces(204)
            .ProducesProblem(404)
            .ProducesProblem(422);
        api.MapPut(
                "/people/{id}/passphrase",
                async (HttpContext c, GardenOfRequest h, string id, NewPassphrase wanted) =>
                    Came(await h.People.SetPassphrase(id, wanted.Passphrase ?? "", Door.VisitorOf(c), c.RequestAborted))
            )
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewPassphrase>(Json)
            .WithName("SetPassphrase")
            .WithSummary("Gives somebody a new passphrase; all their sessions end")
            .Produces(204)
            .ProducesProblem(404)
            .ProducesProblem(422);
        api.MapDelete(
                "/people/{id}",
                (HttpContext c, GardenOfRequest h, string id) => Came(h.People.Remove(id, Door.VisitorOf(c)))
            )
            .WithName("RemovePerson")
            .WithSummary("Removes somebody; their sessions and keys end at once. The last owner stays")
            .Produces(204)
            .ProducesProblem(404)
            .ProducesProblem(422);
    }

    private static void MapSessions(RouteGroupBuilder api)
    {
        api.MapGet("/sessions", (GardenOfRequest h) => Results.Ok(h.People.All.SelectMany(SessionAnswer.Of).ToList()))
            .WithName("Sessions")
            .WithSummary("Where everybody is signed in")
            .Produces<IReadOnlyList<SessionAnswer>>();
        api.MapDelete(
                "/sessions",
                (HttpContext c, GardenOfRequest h) =>
                {
                    h.People.EndSessions(null, Door.VisitorOf(c));
                    return Results.NoContent();
                }
            )
            .WithName("EndAllSessions")
            .WithSummary("Signs everybody out everywhere")
            .Produces(204);
        api.MapDelete(
                "/sessions/{id}",
                (HttpContext c, GardenOfRequest h, string id) => Came(h.People.EndSession(id, Door.VisitorOf(c)))
            )
            .WithName("EndSession")
            .WithSummary("Ends a session")
            .Produces(204)
            .ProducesProblem(404);
        api.MapDelete(
                "/people/{id}/sessions",
                (HttpContext c, GardenOfRequest h, string id) =>
                {
                    if (h.People.Find(id) is null)
                    {
                        return Came("nobody");
                    }

                    h.People.EndSessions(id, Door.VisitorOf(c));
                    return Results.NoContent();
                }
            )
            .WithName("EndSessionsOf")
            .WithSummary("Signs somebody out everywhere")
            .Produces(204)
            .ProducesProblem(404);
        api.MapGet("/sign-ins", (GardenOfRequest h) => Results.Ok(h.People.Log.Newest(SignInLog.Lines)))
            .WithName("SignIns")
            .WithSummary("Sign-ins, failures and changes of people, the newest first")
            .Produces<IReadOnlyList<DoorLine>>();
    }

    private static void MapKeys(RouteGroupBuilder api)
    {
        api.MapGet("/keys", (GardenOfRequest h) => Results.Ok(h.People.All.SelectMany(KeyAnswer.Of).ToList()))
            .WithName("Keys")
            .WithSummary("The keys for programs")
            .Produces<IReadOnlyList<KeyAnswer>>();
        api.MapPost("/keys", MakeKey)
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewKey>(Json)
            .WithName("MakeKey")
            .WithSummary("Makes a key; it is told only this once")
            .Produces<MadeKeyAnswer>(201)
            .ProducesProblem(422);
        api.MapDelete(
                "/keys/{id}",
                (HttpContext c, GardenOfRequest h, string id) => Came(h.People.EndKey(id, Door.VisitorOf(c)))
            )
            .WithName("EndKey")
            .WithSummary("Ends a key")
            .Produces(204)
            .ProducesProblem(404);
    }

    private static async Task<IResult> Add(HttpContext context, GardenOfRequest here, NewPerson wanted)
    {
        var why = await here.People.Add(
            wanted.Name ?? "",
            wanted.Role ?? Role.Helper,
            wanted.Passphrase ?? "",
            Door.VisitorOf(context),
            context.RequestAborted
        );
        return why is null && here.People.Find(wanted.Name!) is { } added
            ? Results.Created($"{Problems.Root}/people/{added.Id}", PersonAnswer.Of(added))
            : Came(why);
    }

    private static async Task<IResult> ChangeOwn(HttpContext context, GardenOfRequest here, OwnPassphrase wanted) =>
        Came(
            await here.People.ChangeOwn(
                MyId(context),
                wanted.Current ?? "",
                wanted.Passphrase ?? "",
                context.User.FindFirstValue(Actor.SessionClaim),
                Door.VisitorOf(context),
                context.RequestAborted
            )
        );

    private static IResult MakeKey(HttpContext context, GardenOfRequest here, NewKey wanted)
    {
        var (key, why) = here.People.MakeKey(
            MyId(context),
            wanted.Name ?? "",
            wanted.Role ?? Role.Visitor,
            wanted.Days ?? 90,
            Door.VisitorOf(context)
        );
        return key is null ? Came(why) : Results.Created($"{Problems.Root}/keys", new MadeKeyAnswer(key));
    }

    // Where nobody is asked who they are, another account of the machine could make itself an owner for later.
    private static ValueTask<object?> Asked(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        var options = (WorkbenchOptions)call.HttpContext.RequestServices.GetService(typeof(WorkbenchOptions))!;
        return options.AsksWho ? next(call) : throw new Refused(403, Words.Of("people.alone"));
    }

    private static string MyId(HttpContext context) => context.User.FindFirstValue(Actor.PersonClaim) ?? "";

    private static Person? Me(HttpContext context, GardenOfRequest here) => here.People.Find(MyId(context));

    private static IResult Came(string? why) =>
        why switch
        {
            null => Results.NoContent(),
            "nobody" or "no-session" or "no-key" => throw new Refused(404, Words.Of($"people.said.{why}")),
            _ => throw new Refused(422, Words.Of($"people.said.{why}")),
        };
}
