using System.Net;
using System.Net.Sockets;
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

    /// <summary>Tries to sign in that one address has in a minute, right ones too. Wrong ones have a limit of their own.</summary>
    public const int MostTries = 100;

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
                    AddressOf(context),
                    _ => new FixedWindowRateLimiterOptions { PermitLimit = MostTries, Window = TimeSpan.FromMinutes(1) }
                )
        );
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
            RateLimitPartition.GetFixedWindowLimiter(
                AddressOf(context),
                _ => new FixedWindowRateLimiterOptions { PermitLimit = Most, Window = TimeSpan.FromSeconds(10) }
            )
        );
    }

    /// <summary>What counts as one address.</summary>
    public static string AddressOf(HttpContext context) => Shared(context.Connection.RemoteIpAddress);

    /// <summary>What counts as one address: of IPv6 the first half, for a house or a machine has all of the second.</summary>
    public static string Shared(IPAddress? address)
    {
        if (address is null || address.AddressFamily == AddressFamily.InterNetwork)
        {
            return address?.ToString() ?? "";
        }

        if (address.IsIPv4MappedToIPv6)
        {
            return address.MapToIPv4().ToString();
        }

        var bytes = address.GetAddressBytes();
        bytes.AsSpan(8).Clear();
        return new IPAddress(bytes).ToString();
    }
}
