using System.Threading.RateLimiting;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.SignIn;

/// <summary>Wrong passphrases, codes and tokens of one address. Right ones do not count: a class that signs in together shares one.</summary>
internal sealed class WrongTries : IDisposable
{
    /// <summary>Wrong ones that an address has in a minute.</summary>
    public const int Most = 10;

    private readonly PartitionedRateLimiter<HttpContext> _limiter = PartitionedRateLimiter.Create<HttpContext, string>(
        context =>
            RateLimitPartition.GetFixedWindowLimiter(
                Rates.AddressOf(context),
                _ => new FixedWindowRateLimiterOptions { PermitLimit = Most, Window = TimeSpan.FromMinutes(1) }
            )
    );

    /// <summary>Whether the address has had all of its tries.</summary>
    public bool IsFull(HttpContext context)
    {
        using var lease = _limiter.AttemptAcquire(context, 0);
        if (!lease.IsAcquired)
        {
            context.Response.Headers.RetryAfter = "60";
        }

        return !lease.IsAcquired;
    }

    /// <summary>Counts a wrong one.</summary>
    public void Count(HttpContext context) => _limiter.AttemptAcquire(context).Dispose();

    public void Dispose() => _limiter.Dispose();
}
