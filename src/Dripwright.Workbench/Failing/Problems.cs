using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Failing;

/// <summary>What went wrong, as RFC 9457 tells it, with a number that stands in the log.</summary>
internal static partial class Problems
{
    /// <summary>Where the HTTP interface lies.</summary>
    public const string Root = "/api/v1";

    /// <summary>Whether a program asked, not a browser's page.</summary>
    public static bool AreFor(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase);

    /// <summary>Turns what a handler could not do into a problem.</summary>
    public static async ValueTask<object?> Filter(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        var context = call.HttpContext;
        try
        {
            return await next(call);
        }
        catch (Refused refused)
        {
            if (refused.Version is { } version)
            {
                context.Response.Headers.ETag = Versions.Tag(version);
            }

            if (refused.RetryAfter is { } seconds)
            {
                context.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            }

            return Of(context, refused.Status, refused.Message, refused.Faults);
        }
        catch (LineFull full)
        {
            context.Response.Headers.RetryAfter = Math.Ceiling(full.RetryAfter.TotalSeconds)
                .ToString(CultureInfo.InvariantCulture);
            return Of(context, 503, Words.Of("http.line-full"));
        }
        catch (BadHttpRequestException bad)
        {
            return Of(context, bad.StatusCode);
        }
        catch (GardenException trouble)
        {
            if (StatusOf(trouble.Kind) >= 500)
            {
                Tell(LogOf(context), context.Request.Path, trouble);
            }

            Passing(context, trouble);
            return Of(context, StatusOf(trouble.Kind), trouble.ForPage);
        }
        catch (OperationCanceledException) when (!context.RequestAborted.IsCancellationRequested)
        {
            context.Response.Headers.RetryAfter = "10";
            return Of(context, 503, Words.Of("http.too-long"));
        }
    }

    /// <summary>A problem as an answer.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="detail">What is wrong and what to do; the usual words where null.</param>
    /// <param name="faults">Faults of a file.</param>
    /// <param name="number">The number, where the log has one already.</param>
    public static IResult Of(
        HttpContext context,
        int status,
        string? detail = null,
        IReadOnlyList<Fault>? faults = null,
        string? number = null
    )
    {
        if (number is null)
        {
            number = Trouble.Number();
            Note(LogOf(context), number, status, context.Request.Method, context.Request.Path);
        }

        var more = new Dictionary<string, object?>(StringComparer.Ordinal) { ["number"] = number };
        if (faults is { Count: > 0 })
        {
            more["faults"] = faults.Told();
        }

        return Results.Problem(
            detail ?? Usual(status),
            statusCode: status,
            title: Title(status),
            type: "about:blank",
            extensions: more
        );
    }

    /// <summary>Whether a trouble may go by itself; then the answer says when to ask again.</summary>
    public static bool Passing(HttpContext context, GardenException? trouble)
    {
        if (trouble is not { MayPass: true })
        {
            return false;
        }

        context.Response.Headers.RetryAfter = "10";
        return true;
    }

    private static ILogger LogOf(HttpContext context) =>
        context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Http");

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused {Number}: {Status} {Method} {Where}")]
    private static partial void Note(ILogger log, string number, int status, string method, string where);

    [LoggerMessage(Level = LogLevel.Error, Message = "The garden failed at {Where}")]
    private static partial void Tell(ILogger log, string where, Exception why);

    private static int StatusOf(TroubleKind kind) =>
        kind switch
        {
            TroubleKind.NotAllowed => 403,
            TroubleKind.Refused or TroubleKind.NotAGarden or TroubleKind.Damaged or TroubleKind.Newer => 422,
            _ => 503,
        };

    private static string Title(int status) =>
        Words.Or(Key("title", status), Words.Of(status >= 500 ? "http.title.500" : "http.title.other"));

    private static string Usual(int status) =>
        string.Format(
            CultureInfo.InvariantCulture,
            Words.Or(Key("usual", status), Words.Of("http.usual.other")),
            Root + "/openapi.json"
        );

    private static string Key(string what, int status) =>
        string.Create(CultureInfo.InvariantCulture, $"http.{what}.{status}");
}
