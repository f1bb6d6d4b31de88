using Dripwright.Workbench.Setup;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Encryption;

/// <summary>While the workbench is open: takes up a renewed certificate, renews the garden's own, and tells ahead what will go wrong.</summary>
internal sealed partial class CertificateWatch(
    ServedCertificate served,
    WorkbenchOptions options,
    ILogger<CertificateWatch> log
) : BackgroundService
{
    /// <summary>How often it looks.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

    /// <summary>How often it says the same thing again.</summary>
    public static readonly TimeSpan Again = TimeSpan.FromDays(1);

    private readonly Dictionary<string, DateTimeOffset> _told = new(StringComparer.Ordinal);
    private DateTimeOffset _tried = DateTimeOffset.MinValue;

    /// <summary>One look.</summary>
    public void Look()
    {
        var now = (options.Time ?? TimeProvider.System).GetUtcNow();
        RenewIfDue(now);
        if (served.Reload() is { } fault)
        {
            Unread(log, fault);
        }

        foreach (var concern in served.Concerns)
        {
            if (!_told.TryGetValue(concern.Key, out var told) || now - told >= Again)
            {
                _told[concern.Key] = now;
                Concerned(log, concern.Text);
            }
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (served.Now is not null)
        {
            Look();
            await Task.Delay(Every, options.Time ?? TimeProvider.System, stoppingToken).ConfigureAwait(false);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The new certificate is not used: {Fault}")]
    private static partial void Unread(ILogger log, string fault);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Certificate: {Concern}")]
    private static partial void Concerned(ILogger log, string concern);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The certificate of the garden's own was renewed")]
    private static partial void Renewed(ILogger log);

    [LoggerMessage(Level = LogLevel.Error, Message = "The certificate could not be renewed: {Why}")]
    private static partial void NotRenewed(ILogger log, string why);

    private void RenewIfDue(DateTimeOffset now)
    {
        if (
            served is not { Own: { CanRenew: true } own, Now: { } shown }
            || shown.Until - now.UtcDateTime > OwnCertificate.Ahead
            || now - _tried < Again
        )
        {
            return;
        }

        _tried = now;
        try
        {
            own.Renew();
            Renewed(log);
        }
        catch (EncryptionException why)
        {
            NotRenewed(log, why.Message);
        }
    }
}
