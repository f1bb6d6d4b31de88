using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Dripwright.Workbench.Encryption;

/// <summary>For whatever watches over the program: "Degraded" (200) where the certificate needs looking after, "Unhealthy" (503) where browsers refuse it.</summary>
internal sealed class CertificateHealth(ServedCertificate served) : IHealthCheck
{
    public Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context,
        CancellationToken cancellationToken = default
    )
    {
        var concerns = served.Concerns;
        return Task.FromResult(
            concerns.Any(one => one.ShutsOut) ? HealthCheckResult.Unhealthy()
            : concerns.Count > 0 ? HealthCheckResult.Degraded()
            : HealthCheckResult.Healthy()
        );
    }
}
