using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Hosting;

/// <summary>Headers that keep a page from doing, or being used for, what it is not for.</summary>
/// <remarks>
/// Everything comes from this server: no inline script, no inline style. Pages do not read another site's answers, and no
/// other site frames them. A request whose Host is not this machine's is refused, so that a name elsewhere that resolves to
/// this machine cannot read the garden.
/// </remarks>
internal sealed class Headers(RequestDelegate next)
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
        + "connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    private static readonly string[] s_own = ["localhost", "127.0.0.1", "[::1]"];

    public Task Invoke(HttpContext context)
    {
        if (!s_own.Contains(context.Request.Host.Host, StringComparer.OrdinalIgnoreCase))
        {
            context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
            return Task.CompletedTask;
        }

        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
        return next(context);
    }
}
