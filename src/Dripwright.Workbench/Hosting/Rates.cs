using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace Dripwright.Workbench.Hosting;

/// <summary>How many requests one address may make.</summary>
internal static class Rates
{
    /// <summary>Requests in ten seconds: a first view takes about ten, and a class of fifty may share one address.</summary>
    public const int Most = 2000;

    public static void Limit(RateLimiterOptions limiter)
    {
        limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
            RateLimitPartition.GetFixedWindowLimiter(
                context.Connection.RemoteIpAddress?.ToString() ?? "",
                _ => new FixedWindowRateLimiterOptions { PermitLimit = Most, Window = TimeSpan.FromSeconds(10) }
            )
        );
    }
}
