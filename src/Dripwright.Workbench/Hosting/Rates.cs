using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace Dripwright.Workbench.Hosting;

/// <summary>How many requests one address may make.</summary>
internal static class Rates
{
    /// <summary>Requests in ten seconds: a first view takes about ten, and a class of fifty may share one address.</summary>
    public const int Most = 2000;

    /// <summary>Name of the limit on signing in.</summary>
    public const string SignIn = "sign-in";

    /// <summary>Tries to sign in that one address has in a minute.</summary>
    public const int MostTries = 10;

    public static void Limit(RateLimiterOptions limiter)
    {
        limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limiter.OnRejected = (rejected, _) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = "10";
            return ValueTask.CompletedTask;
        };
        limiter.AddPolicy(
            SignIn,
            context =>
                RateLimitPartition.GetFixedWindowLimiter(
                    Address(context),
                    _ => new FixedWindowRateLimiterOptions { PermitLimit = MostTries, Window = TimeSpan.FromMinutes(1) }
                )
        );
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
            RateLimitPartition.GetFixedWindowLimiter(
                Address(context),
                _ => new FixedWindowRateLimiterOptions { PermitLimit = Most, Window = TimeSpan.FromSeconds(10) }
            )
        );
    }

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";
}
