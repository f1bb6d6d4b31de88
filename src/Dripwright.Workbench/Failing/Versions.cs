using System.Globalization;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Failing;

/// <summary>Versions of a draft as ETag and If-Match carry them.</summary>
internal static class Versions
{
    /// <summary>A version as an ETag.</summary>
    public static string Tag(int version) => string.Create(CultureInfo.InvariantCulture, $"\"{version}\"");

    /// <summary>Says in the answer which version it shows.</summary>
    public static void Show(HttpContext context, Draft draft) => context.Response.Headers.ETag = Tag(draft.Version);

    /// <summary>The version that a change is based on; that of the draft itself for <c>*</c>.</summary>
    /// <exception cref="Refused">The request does not say it.</exception>
    public static int Wanted(HttpContext context, Draft draft) =>
        Said(context, draft)
        ?? throw new Refused(428, Words.Of("http.if-match", Tag(draft.Version))) { Version = draft.Version };

    /// <summary>Refuses where the request names another version than the draft has; one that names none passes.</summary>
    /// <exception cref="Refused">It is another one.</exception>
    public static void Check(HttpContext context, Draft draft)
    {
        if (Said(context, draft) is { } version && version != draft.Version)
        {
            throw Overtaken(draft);
        }
    }

    public static Refused Overtaken(Draft current) =>
        new(
            412,
            $"It has been changed since the version you name, and is {Tag(current.Version)} now. Nothing was done: fetch it, look at both, and send again."
        )
        {
            Version = current.Version,
        };

    private static int? Said(HttpContext context, Draft draft)
    {
        var said = context.Request.Headers.IfMatch.ToString().Trim();
        return said.Length == 0 ? null
            : said == "*" ? draft.Version
            : int.TryParse(said.Trim('"'), NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version
            : throw new Refused(400, Words.Of("http.if-match.strange"));
    }
}
