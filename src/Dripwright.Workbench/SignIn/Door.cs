using System.Security.Claims;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.SignIn;

/// <summary>
/// Where the workbench asks who somebody is: nobody comes past without having signed in, and nobody further than their role allows.
/// </summary>
internal sealed class Door(RequestDelegate next, LiveConnections live, LocalPass? pass = null)
{
    /// <summary>Where one signs in.</summary>
    public const string Page = "/sign-in";

    /// <summary>Where one sees the people, keys and sessions.</summary>
    public const string PeoplePage = "/people";

    /// <summary>Where one is told that one's role does not reach so far.</summary>
    public const string NotAllowedPage = "/not-allowed";

    /// <summary>Says which garden somebody has signed in to: a session of one opens no other.</summary>
    public const string GardenClaim = "garden";

    private const string Scheme = CookieAuthenticationDefaults.AuthenticationScheme;
    private const string SecretClaim = "secret";

    /// <summary>What signing in needs, whether it is used or not.</summary>
    public static void Add(IServiceCollection services)
    {
        services.AddSingleton<LiveConnections>();
        services.AddHostedService(provider => provider.GetRequiredService<LiveConnections>());
        services.AddSingleton<WrongTries>();
        services
            .AddAuthentication(Scheme)
            .AddCookie(cookie =>
            {
                cookie.Cookie.Name = "dripwright";
                cookie.Cookie.HttpOnly = true;
                cookie.Cookie.SameSite = SameSiteMode.Strict;
                cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
                cookie.ExpireTimeSpan = People.Idle;
                cookie.SlidingExpiration = true;
                cookie.Events.OnValidatePrincipal = async context =>
                {
                    if (SessionOf(context.HttpContext, context.Principal) is null)
                    {
                        context.RejectPrincipal();
                        await context.HttpContext.SignOutAsync(Scheme);
                    }
                };
            });
    }

    /// <summary>Gives a browser the cookie of a session.</summary>
    public static Task Give(HttpContext context, string garden, string secret) =>
        context.SignInAsync(
            Scheme,
            new ClaimsPrincipal(
                new ClaimsIdentity([new Claim(SecretClaim, secret), new Claim(GardenClaim, garden)], Scheme)
            ),
            new AuthenticationProperties { IsPersistent = true }
        );

    /// <summary>Takes the cookie back.</summary>
    public static Task Take(HttpContext context) => context.SignOutAsync(Scheme);

    /// <summary>Who is asking, for the log of sign-ins.</summary>
    public static Visitor VisitorOf(HttpContext context) =>
        new(
            context.User.Identity?.Name ?? "",
            context.Connection.RemoteIpAddress?.ToString(),
            Device.Of(context.Request.Headers.UserAgent.ToString())
        );

    public async Task Invoke(HttpContext context, GardenOfRequest here)
    {
        here.Act(Actor.Nobody);
        var isApi = Problems.AreFor(context);
        if (isApi && KeyOf(context) is { } key)
        {
            context.User = Keyed(context, here, key);
        }
        else if (SessionOf(context, context.User) is { } signedIn)
        {
            context.User = signedIn;
        }
        else
        {
            context.User = new ClaimsPrincipal(new ClaimsIdentity());
        }

        var actor = Actor.Of(context.User, here.People, pass);
        here.Act(actor);
        if (actor.Role is null && Access.Of(context) is not Right.Open)
        {
            await AskToSignIn(context, isApi);
        }
        else if (May(context, actor))
        {
            // A page that is open has a channel that was let in once: it is cut when the session ends.
            using var tie = IsChannel(context) ? live.Tie(context, actor) : null;
            await next(context);
        }
        else if (isApi)
        {
            await Problems.Of(context, 403, Words.Of("http.role")).ExecuteAsync(context);
        }
        else if (HttpMethods.IsGet(context.Request.Method) && IsPage(context))
        {
            context.Response.Redirect(NotAllowedPage);
        }
        else
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
        }
    }

    // What is nowhere is told as such, and so is a wrong method or kind of file, for which the platform has answers of its own. What is
    // somewhere and does not stand in the table is closed.
    private static bool May(HttpContext context, Actor actor) =>
        Access.Of(context) is { } right ? actor.Has(right) : context.GetEndpoint() is not RouteEndpoint;

    private static async Task AskToSignIn(HttpContext context, bool isApi)
    {
        if (isApi)
        {
            context.Response.Headers.WWWAuthenticate = "Bearer";
            await Problems.Of(context, 401).ExecuteAsync(context);
        }
        else if (HttpMethods.IsGet(context.Request.Method) && IsPage(context))
        {
            context.Response.Redirect(Page);
        }
        else
        {
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        }
    }

    private static bool IsPage(HttpContext context) =>
        !context.WebSockets.IsWebSocketRequest
        && !IsChannel(context)
        && !context.Request.Path.StartsWithSegments("/downloads", StringComparison.OrdinalIgnoreCase);

    private static bool IsChannel(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/_blazor", StringComparison.OrdinalIgnoreCase);

    private static string? KeyOf(HttpContext context)
    {
        var said = context.Request.Headers.Authorization.ToString();
        return said.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) && said.Length < 200
            ? said["Bearer ".Length..].Trim()
            : null;
    }

    private static ClaimsPrincipal Keyed(HttpContext context, GardenOfRequest here, string key)
    {
        if (here.People.OfKey(key) is not { } known)
        {
            context.User = new ClaimsPrincipal(new ClaimsIdentity());
            here.People.NoteWrongKey(VisitorOf(context));
            return context.User;
        }

        return new ClaimsPrincipal(
            new ClaimsIdentity(
                [
                    new Claim(ClaimTypes.Name, $"{known.Person.Name} ({known.Key.Label})"),
                    new Claim(Actor.KeyClaim, known.Key.Id),
                    new Claim(Actor.PersonClaim, known.Person.Id),
                ],
                "key"
            )
        );
    }

    // What the cookie says is only a secret: whose session that is, and whether it still is one, stands here.
    private static ClaimsPrincipal? SessionOf(HttpContext context, ClaimsPrincipal? cookie)
    {
        var here = context.RequestServices.GetRequiredService<GardenOfRequest>();
        if (
            cookie?.FindFirstValue(SecretClaim) is not { } secret
            || cookie.FindFirstValue(GardenClaim) is not { } garden
            || garden != here.Id
        )
        {
            return null;
        }

        List<Claim> claims = [new(GardenClaim, garden)];
        if (here.People.OfSession(secret, context.Connection.RemoteIpAddress?.ToString()) is { } known)
        {
            claims.Add(new(ClaimTypes.Name, known.Person.Name));
            claims.Add(new(Actor.SessionClaim, known.Session.Id));
            claims.Add(new(Actor.PersonClaim, known.Person.Id));
        }
        else if (context.RequestServices.GetService<LocalPass>()?.OfSession(secret) is { } local)
        {
            claims.Add(new(Actor.SessionClaim, local));
        }
        else
        {
            return null;
        }

        return new ClaimsPrincipal(new ClaimsIdentity(claims, Scheme));
    }
}
