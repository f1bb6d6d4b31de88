using System.Net;
using Dripwright.Workbench.Setup;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Hosting;

/// <summary>Headers that keep a page from doing, or being used for, what it is not for.</summary>
/// <remarks>
/// Everything comes from this server: no inline script, no inline style. Pages do not read another site's answers, and no
/// other site frames them. A request whose Host is not this machine's is refused, so that a name elsewhere that resolves to
/// this machine cannot read the garden: an address is right where the request arrived at it, a name where it is known.
/// </remarks>
internal sealed class Headers(RequestDelegate next, WorkbenchOptions options)
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
        + "connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    private readonly HashSet<string> _names = new(Names(options), StringComparer.OrdinalIgnoreCase);

    public Task Invoke(HttpContext context)
    {
        // When the answer begins, so that also one that was begun anew after a failure has them.
        context.Response.OnStarting(Put, context);
        if (!IsOurs(context))
        {
            context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
            return Task.CompletedTask;
        }

        return next(context);
    }

    private static Task Put(object state)
    {
        var context = (HttpContext)state;
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        // To ourselves we say where a form comes from, to others nothing.
        headers["Referrer-Policy"] = "same-origin";
        // Browsers obey it only where nobody can have changed it on its way, and complain elsewhere.
        if (context.Request.IsHttps || context.Request.Host.Host is "localhost" or "127.0.0.1" or "[::1]")
        {
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
        }

        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
        return Task.CompletedTask;
    }

    private static string[] Names(WorkbenchOptions options)
    {
        string[] own = ["localhost", "127.0.0.1", "::1"];
        if (!options.Network)
        {
            return own;
        }

        var machine = Environment.MachineName;
        return [.. own, machine, $"{machine}.local", .. options.KnownAs];
    }

    private bool IsOurs(HttpContext context)
    {
        var host = context.Request.Host.Host.Trim('[', ']');
        if (_names.Contains(host))
        {
            return true;
        }

        return options.Network
            && context.Connection.LocalIpAddress is { } arrived
            && IPAddress.TryParse(host, out var said)
            && said.MapToIPv6().Equals(arrived.MapToIPv6());
    }
}
