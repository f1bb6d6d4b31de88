using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Encryption;

/// <summary>
/// Where the workbench has a certificate, what comes without encryption is led to the encrypted address; nothing of the garden is shown
/// and no passphrase taken. Only what a phone needs before it trusts the authority is there without, and the health address.
/// </summary>
/// <remarks>The leading is never for good (307, no Strict-Transport-Security): docs/decisions/0011-encryption.md says why.</remarks>
internal sealed class EncryptedOnly(RequestDelegate next)
{
    private static readonly string[] s_plain =
    [
        CertificateAddresses.Page,
        "/styles",
        "/_content",
        "/_framework",
        Health.Address,
    ];

    public Task Invoke(HttpContext context)
    {
        var request = context.Request;
        if (
            request.IsHttps
            || s_plain.Any(open => request.Path.StartsWithSegments(open, StringComparison.OrdinalIgnoreCase))
        )
        {
            return next(context);
        }

        // What was sent is not to be sent on: a program that sends keys in the clear must stop, not go on unnoticed.
        if (Problems.AreFor(context))
        {
            return Problems
                .Of(context, StatusCodes.Status403Forbidden, Language.Words.Of("encryption.only"))
                .ExecuteAsync(context);
        }

        if (!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        context.Response.StatusCode = StatusCodes.Status307TemporaryRedirect;
        context.Response.Headers.Location =
            $"https://{request.Host.Value}{request.PathBase.ToUriComponent()}{request.Path.ToUriComponent()}{request.QueryString.ToUriComponent()}";
        return Task.CompletedTask;
    }
}
