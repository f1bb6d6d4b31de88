using System.Globalization;
using System.Security.Cryptography;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Failing;

/// <summary>When a request fails: a plain page with a number, and the same number with the whole story in the log.</summary>
internal sealed partial class Trouble(RequestDelegate next, ILogger<Trouble> log)
{
    /// <summary>A number to find in the log: short enough to read out, long enough not to come twice.</summary>
    public static string Number() =>
        RandomNumberGenerator.GetInt32(100_000, 1_000_000).ToString(CultureInfo.InvariantCulture)
        + "-"
        + RandomNumberGenerator.GetInt32(100, 1000).ToString(CultureInfo.InvariantCulture);

    [LoggerMessage(Level = LogLevel.Error, Message = "Trouble {Number} at {Where}")]
    public static partial void Tell(ILogger log, string number, string where, Exception why);

    public async Task Invoke(HttpContext context)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Nobody waits for the answer any more.
        }
        catch (BadHttpRequestException bad)
        {
            if (!context.Response.HasStarted)
            {
                context.Response.StatusCode = bad.StatusCode;
            }
        }
#pragma warning disable CA1031 // The last net: whatever it is, the person gets one clear page.
        catch (Exception why)
#pragma warning restore CA1031
        {
            var number = Number();
            Tell(log, number, context.Request.Path, why);
            if (context.Response.HasStarted)
            {
                throw;
            }

            context.Response.Clear();
            var garden = why as GardenException;
            var status = Problems.Passing(context, garden) ? 503 : 500;
            if (Problems.AreFor(context))
            {
                await Problems
                    .Of(context, status, garden?.ForPage, null, number)
                    .ExecuteAsync(context)
                    .ConfigureAwait(false);
                return;
            }

            context.Response.StatusCode = status;
            context.Response.ContentType = "text/html; charset=utf-8";
            var said = garden is null ? Words.Of("trouble.text") : System.Net.WebUtility.HtmlEncode(garden.ForPage);
            await context
                .Response.WriteAsync(
                    $"""
                    <!DOCTYPE html><html lang="{Words.Language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
                    <title>{Words.Of(
                        "trouble.title"
                    )}</title><link rel="stylesheet" href="/_content/Dripwright.Workbench/app.css"></head>
                    <body><main class="page"><h1>{Words.Of("trouble.title")}</h1><p>{said}</p>
                    <p>{Words.Of("trouble.number", number)}</p><p><a href="/">{Words.Of(
                        "trouble.home"
                    )}</a></p></main></body></html>
                    """
                )
                .ConfigureAwait(false);
        }
    }
}
