using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Household;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.SignIn;

/// <summary>Refuses what a page of another site sends, also where that page's reader is signed in here.</summary>
/// <remarks>
/// Browsers say from which site a request comes; other programs say nothing, and they carry no cookie of somebody else. Also
/// the page's own channel (a WebSocket, which browsers open across sites) passes here.
/// </remarks>
internal sealed class SameOrigin(RequestDelegate next)
{
    public Task Invoke(HttpContext context)
    {
        // The page that lets its own reader in lies in a file, which is no site: its token speaks for it.
        if (!context.Request.Path.Equals(LocalPass.Address, StringComparison.Ordinal) && IsForeign(context.Request))
        {
            if (Problems.AreFor(context))
            {
                return Problems.Of(context, StatusCodes.Status403Forbidden).ExecuteAsync(context);
            }

            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        return next(context);
    }

    private static bool IsForeign(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0)
        {
            // Only the place counts: before a proxy that encrypts the scheme is another one.
            return !Uri.TryCreate(origin, UriKind.Absolute, out var from)
                || !string.Equals(from.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase);
        }

        // A link on another site may lead here; anything else from there may not.
        return request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site"
            && !(HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate");
    }
}
