using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Dripwright.Workbench.Hosting;

/// <summary>
/// An address for whatever watches over the program: 200 and "Healthy" where every garden can be read, else 503 and "Unhealthy". It says
/// nothing about the gardens, so it needs no signing in.
/// </summary>
internal sealed class Health(IGardens gardens) : IHealthCheck
{
    /// <summary>Where it answers.</summary>
    public const string Address = "/health";

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(5);

    public static void Add(IServiceCollection services) =>
        services.AddHealthChecks().AddCheck<Health>("gardens", timeout: s_patience);

    public static void Map(WebApplication app) => app.MapHealthChecks(Address);

    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context,
        CancellationToken cancellationToken = default
    )
    {
        // A garden that cannot be read throws, which the caller counts as unhealthy and writes into the log.
        foreach (var served in gardens.All)
        {
            _ = await served.Garden.SettingsAsync(cancellationToken).ConfigureAwait(false);
        }

        return HealthCheckResult.Healthy();
    }
}
