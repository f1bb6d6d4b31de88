using System.Security.Claims;
using Dripwright.Language;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.SignIn;

/// <summary>The addresses to which the forms of signing in and of the people's page are sent. Each asks for the form's own token.</summary>
internal static class DoorForms
{
    public static void Map(WebApplication app)
    {
        var doors = app.MapGroup("")
            .RequireRateLimiting(Rates.SignIn)
            .AddEndpointFilter(OnlyWithTriesLeft)
            .ExcludeFromDescription();
        doors.MapPost($"{Door.Page}/enter", Enter);
        doors.MapPost($"{Door.Page}/join", Join);
        // It comes from a file, which can have no token of a form; it brings one of its own, good once.
        doors.MapPost(LocalPass.Address, EnterHere).DisableAntiforgery();
        var people = app.MapGroup(Door.PeoplePage).ExcludeFromDescription();
        people.MapPost("/leave", Leave);
        people.MapPost("/passphrase", ChangeOwn).RequireRateLimiting(Rates.SignIn);
        people.MapPost("/sessions/end", EndSession);
        people.MapPost("/invite", Invite);
        people.MapPost("/add", Add);
        people.MapPost("/role", ChangeRole);
        people.MapPost("/passphrase/set", SetPassphrase);
        people.MapPost("/remove", Remove);
        people.MapPost("/keys", MakeKey);
        people.MapPost("/keys/drop", DropKey);
    }

    private static async ValueTask<object?> OnlyWithTriesLeft(
        EndpointFilterInvocationContext asked,
        EndpointFilterDelegate next
    )
    {
        var wrong = asked.HttpContext.RequestServices.GetRequiredService<WrongTries>();
        return wrong.IsFull(asked.HttpContext)
            ? Results.StatusCode(StatusCodes.Status429TooManyRequests)
            : await next(asked);
    }

    private static async Task<IResult> Enter(
        HttpContext context,
        GardenOfRequest here,
        WrongTries wrong,
        [FromForm] string? name,
        [FromForm] string? passphrase
    )
    {
        var by = Door.VisitorOf(context);
        if (await here.People.Enter(name ?? "", passphrase ?? "", by, context.RequestAborted) is not { } secret)
        {
            wrong.Count(context);
            return Results.LocalRedirect($"{Door.Page}?said=wrong");
        }

        await Door.Give(context, here.Id, secret);
        return Results.LocalRedirect("/");
    }

    private static async Task<IResult> Join(
        HttpContext context,
        GardenOfRequest here,
        WrongTries wrong,
        [FromForm] string? name,
        [FromForm] string? code,
        [FromForm] string? passphrase
    )
    {
        var by = Door.VisitorOf(context);
        if (await here.People.Join(name ?? "", code ?? "", passphrase ?? "", by, context.RequestAborted) is { } why)
        {
            if (why == "code")
            {
                wrong.Count(context);
            }

            return Results.LocalRedirect($"{Door.Page}?said={why}");
        }

        if (here.People.Begin(name ?? "", by) is { } secret)
        {
            await Door.Give(context, here.Id, secret);
        }

        return Results.LocalRedirect("/");
    }

    private static async Task<IResult> EnterHere(
        HttpContext context,
        GardenOfRequest here,
        WrongTries wrong,
        IServiceProvider services,
        [FromForm] string? token
    )
    {
        if ((services.GetService(typeof(LocalPass)) as LocalPass)?.Take(token ?? "") is not { } session)
        {
            wrong.Count(context);
            return Results.LocalRedirect($"{Door.Page}?said=token");
        }

        await Door.Give(context, here.Id, session.Secret);
        // A redirect would still count as coming from the file, and the cookie would stay behind: the next page is asked for by this one.
        return Results.Content(
            $"""
            <!DOCTYPE html><html lang="{Words.Language}"><head><meta charset="utf-8"><meta http-equiv="refresh" content="0;url=/"><title>Dripwright</title></head>
            <body><p><a href="/">{Words.Of("signin.local.on")}</a></p></body></html>
            """,
            "text/html; charset=utf-8"
        );
    }

    private static async Task<IResult> Leave(
        HttpContext context,
        GardenOfRequest here,
        IServiceProvider services,
        [FromForm] bool? everywhere
    )
    {
        var by = Door.VisitorOf(context);
        if (Claim(context, Actor.PersonClaim) is { } person && everywhere == true)
        {
            here.People.EndSessions(person, by);
        }
        else if (Claim(context, Actor.SessionClaim) is { } session)
        {
            _ = here.People.EndSession(session, by);
            (services.GetService(typeof(LocalPass)) as LocalPass)?.End(session);
        }

        await Door.Take(context);
        return Results.LocalRedirect(Door.Page);
    }

    private static async Task<IResult> ChangeOwn(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? current,
        [FromForm] string? passphrase
    ) =>
        Back(
            await here.People.ChangeOwn(
                Claim(context, Actor.PersonClaim) ?? "",
                current ?? "",
                passphrase ?? "",
                Claim(context, Actor.SessionClaim),
                Door.VisitorOf(context),
                context.RequestAborted
            ),
            "passphrase"
        );

    private static IResult EndSession(HttpContext context, GardenOfRequest here, [FromForm] string? id)
    {
        // One's own by everybody, others' by who rules.
        var owner = here.Actor.Has(Right.Rule) ? null : Claim(context, Actor.PersonClaim) ?? "";
        var by = Door.VisitorOf(context);
        if (id == "all" && owner is null)
        {
            here.People.EndSessions(null, by, Claim(context, Actor.SessionClaim));
            return Back(null, "ended");
        }

        return Back(here.People.EndSession(id ?? "", by, owner), "ended");
    }

    private static IResult Invite(HttpContext context, GardenOfRequest here, [FromForm] Role? role)
    {
        var code = here.People.NewCode(role ?? Role.Helper, Door.VisitorOf(context));
        here.People.Show(Claim(context, Actor.SessionClaim) ?? "", Words.Of("people.code", code));
        return Results.LocalRedirect(Door.PeoplePage);
    }

    private static async Task<IResult> Add(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? name,
        [FromForm] Role? role,
        [FromForm] string? passphrase
    ) =>
        Back(
            await here.People.Add(
                name ?? "",
                role ?? Role.Helper,
                passphrase ?? "",
                Door.VisitorOf(context),
                context.RequestAborted
            ),
            "added"
        );

    private static IResult ChangeRole(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? id,
        [FromForm] Role role
    ) => Back(here.People.ChangeRole(id ?? "", role, Door.VisitorOf(context)), "role");

    private static async Task<IResult> SetPassphrase(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? id,
        [FromForm] string? passphrase
    ) =>
        Back(
            await here.People.SetPassphrase(
                id ?? "",
                passphrase ?? "",
                Door.VisitorOf(context),
                context.RequestAborted
            ),
            "passphrase-set"
        );

    private static IResult Remove(HttpContext context, GardenOfRequest here, [FromForm] string? id) =>
        Back(here.People.Remove(id ?? "", Door.VisitorOf(context)), "removed");

    private static IResult MakeKey(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? label,
        [FromForm] Role? role,
        [FromForm] int? days
    )
    {
        var (key, why) = here.People.MakeKey(
            Claim(context, Actor.PersonClaim) ?? "",
            label ?? "",
            role ?? Role.Visitor,
            days ?? 90,
            Door.VisitorOf(context)
        );
        if (key is not null)
        {
            here.People.Show(Claim(context, Actor.SessionClaim) ?? "", Words.Of("people.key", key));
        }

        return Back(why, null);
    }

    private static IResult DropKey(HttpContext context, GardenOfRequest here, [FromForm] string? id) =>
        Back(here.People.EndKey(id ?? "", Door.VisitorOf(context)), "key-ended");

    private static string? Claim(HttpContext context, string type) => context.User.FindFirstValue(type);

    private static IResult Back(string? why, string? done) =>
        Results.LocalRedirect(
            why is not null ? $"{Door.PeoplePage}?said={why}"
            : done is not null ? $"{Door.PeoplePage}?done={done}"
            : Door.PeoplePage
        );
}
