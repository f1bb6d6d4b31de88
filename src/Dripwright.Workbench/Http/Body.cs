using System.Text;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;

namespace Dripwright.Workbench.Http;

/// <summary>What comes with a request.</summary>
internal static class Body
{
    private static readonly UTF8Encoding s_strict = new(false, throwOnInvalidBytes: true);

    /// <summary>The bytes; the endpoint's own limit bounds them.</summary>
    public static async Task<byte[]> Bytes(HttpContext context)
    {
        using var bytes = new MemoryStream();
        await context.Request.Body.CopyToAsync(bytes, context.RequestAborted);
        return bytes.ToArray();
    }

    /// <summary>The text.</summary>
    /// <exception cref="Refused">It is no UTF-8.</exception>
    public static async Task<string> Text(HttpContext context)
    {
        var bytes = await Bytes(context);
        var start = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
        try
        {
            return s_strict.GetString(bytes.AsSpan(start));
        }
        catch (DecoderFallbackException)
        {
            throw new Refused(422, Words.Of("http.utf8"));
        }
    }

    /// <summary>Says which kind of body an endpoint takes, and how large it may be.</summary>
    public static RouteHandlerBuilder Takes(this RouteHandlerBuilder route, string type, long mostBytes) =>
        route.Accepts<object>(type).WithMetadata(new Most(mostBytes)).ProducesProblem(413).ProducesProblem(415);

    private sealed class Most(long bytes) : IRequestSizeLimitMetadata
    {
        public long? MaxRequestBodySize => bytes;
    }
}
