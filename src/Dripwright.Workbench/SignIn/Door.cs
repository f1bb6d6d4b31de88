using System.Security.Claims;
using Dripwright.Language;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Http;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.SignIn;

/// <summary>When the workbench is open to the house network: nobody comes past without having signed in.</summary>
internal sealed class Door(RequestDelegate next)
{
    /// <summary>Where one signs in.</summary>
    public const string Page = "/sign-in";

    /// <summary>Where one sees the people and one's own keys.</summary>
    public const string PeoplePage = "/people";

    /// <summary>Says which garden somebody has signed in to: a session of one opens no other.</summary>
    public const string GardenClaim = "garden";

    private const string Scheme = CookieAuthenticationDefaults.AuthenticationScheme;
    private const string StampClaim = "stamp";

    // What the page for signing in itself needs: nothing of the garden.
    private static readonly string[] s_open =
    [
        Page,
        "/styles",
        "/_content",
        "/_framework",
        "/not-there",
        Health.Address,
        Encryption.CertificateAddresses.Page,
    ];

    /// <summary>What signing in needs, whether it is used or not.</summary>
    public static void Add(IServiceCollection services)
    {
        services
            .AddAuthentication(Scheme)
            .AddCookie(cookie =>
            {
                cookie.Cookie.Name = "dripwright";
                cookie.Cookie.HttpOnly = true;
                cookie.Cookie.SameSite = SameSiteMode.Strict;
                cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
                cookie.ExpireTimeSpan = TimeSpan.FromDays(14);
                cookie.SlidingExpiration = true;
                cookie.Events.OnValidatePrincipal = async context =>
                {
                    var who = context.Principal?.Identity?.Name ?? "";
                    var stamp = context.Principal?.FindFirstValue(StampClaim) ?? "";
                    var garden = context.Principal?.FindFirstValue(GardenClaim);
                    var here = context.HttpContext.RequestServices.GetRequiredService<GardenOfRequest>();
                    if (garden != here.Id || !here.People.Holds(who, stamp))
                    {
                        context.RejectPrincipal();
                        await context.HttpContext.SignOutAsync(Scheme);
                    }
                };
            });
    }

    /// <summary>The addresses to which the forms are sent. Each asks for the form's own token.</summary>
    public static void Map(WebApplication app)
    {
        app.MapPost($"{Page}/enter", Enter).RequireRateLimiting(Hosting.Rates.SignIn).ExcludeFromDescription();
        app.MapPost($"{Page}/join", Join).RequireRateLimiting(Hosting.Rates.SignIn).ExcludeFromDescription();
        app.MapPost($"{PeoplePage}/leave", Leave).ExcludeFromDescription();
        app.MapPost($"{PeoplePage}/invite", Invite).ExcludeFromDescription();
        app.MapPost($"{PeoplePage}/keys", MakeKey).ExcludeFromDescription();
        app.MapPost($"{PeoplePage}/keys/drop", DropKey).ExcludeFromDescription();
    }

    public async Task Invoke(HttpContext context, GardenOfRequest here)
    {
        var path = context.Request.Path;
        var isApi = Problems.AreFor(context);
        if (isApi && KeyOf(context) is { } key && here.People.OfKey(key) is { } owner)
        {
            context.User = new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Name, owner)], "key"));
        }

        if (
            context.User.Identity?.IsAuthenticated == true
            || s_open.Any(open => path.StartsWithSegments(open, StringComparison.OrdinalIgnoreCase))
        )
        {
            await next(context);
        }
        else if (isApi)
        {
            context.Response.Headers.WWWAuthenticate = "Bearer";
            await Problems.Of(context, 401).ExecuteAsync(context);
        }
        else if (HttpMethods.IsGet(context.Request.Method) && !context.WebSockets.IsWebSocketRequest && IsPage(path))
        {
            context.Response.Redirect(Page);
        }
        else
        {
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        }
    }

    private static bool IsPage(PathString path) =>
        !path.StartsWithSegments("/_blazor", StringComparison.OrdinalIgnoreCase)
        && !path.StartsWithSegments("/downloads", StringComparison.OrdinalIgnoreCase);

    private static string? KeyOf(HttpContext context)
    {
        var said = context.Request.Headers.Authorization.ToString();
        return said.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) && said.Length < 200
            ? said["Bearer ".Length..].Trim()
            : null;
    }

    private static async Task<IResult> Enter(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? name,
        [FromForm] string? passphrase
    )
    {
        if (await here.People.Enter(name ?? "", passphrase ?? "", context.RequestAborted) is not { } person)
        {
            return Results.LocalRedirect($"{Page}?said=wrong");
        }

        await SignIn(context, here, person);
        return Results.LocalRedirect("/");
    }

    private static async Task<IResult> Join(
        HttpContext context,
        GardenOfRequest here,
        [FromForm] string? name,
        [FromForm] string? code,
        [FromForm] string? passphrase
    )
    {
        if (await here.People.Join(name ?? "", code ?? "", passphrase ?? "", context.RequestAborted) is { } why)
        {
            return Results.LocalRedirect($"{Page}?said={why}");
        }

        if (await here.People.Enter(name ?? "", passphrase ?? "", context.RequestAborted) is { } person)
        {
            await SignIn(context, here, person);
        }

        return Results.LocalRedirect("/");
    }

    private static Task SignIn(HttpContext context, GardenOfRequest here, People.Person person) =>
        context.SignInAsync(
            Scheme,
            new ClaimsPrincipal(
                new ClaimsIdentity(
                    [
                        new Claim(ClaimTypes.Name, person.Name),
                        new Claim(StampClaim, person.Stamp),
                        new Claim(GardenClaim, here.Id),
                    ],
                    Scheme
                )
            ),
            new AuthenticationProperties { IsPersistent = true }
        );

    private static async Task<IResult> Leave(HttpContext context, GardenOfRequest here, [FromForm] bool? everywhere)
    {
        if (everywhere == true)
        {
            here.People.EndSessions(Who(context));
        }

        await context.SignOutAsync(Scheme);
        return Results.LocalRedirect(Page);
    }

    // The form holds nothing but its token; a value must be named so that the token is asked for.
    private static IResult Invite(HttpContext context, GardenOfRequest here, [FromForm] string? done)
    {
        _ = done;
        here.People.Show(Who(context), Words.Of("people.code", here.People.NewCode()));
        return Results.LocalRedirect(PeoplePage);
    }

    private static IResult MakeKey(HttpContext context, GardenOfRequest here, [FromForm] string? label)
    {
        var key = here.People.MakeKey(Who(context), label ?? "");
        here.People.Show(Who(context), key is null ? Words.Of("people.enough") : Words.Of("people.key", key));
        return Results.LocalRedirect(PeoplePage);
    }

    private static IResult DropKey(HttpContext context, GardenOfRequest here, [FromForm] string? id)
    {
        here.People.DropKey(Who(context), id ?? "");
        return Results.LocalRedirect(PeoplePage);
    }

    private static string Who(HttpContext context) => context.User.Identity?.Name ?? "";
}
