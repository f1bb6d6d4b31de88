using Dripwright.Store.Keeping;
using Dripwright.Workbench.Setup;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench.Hosting;

/// <summary>Makes a backup a day while the workbench is open. One that was missed is made soon after the next start.</summary>
internal sealed partial class DailyBackups(IGardens gardens, WorkbenchOptions options, ILogger<DailyBackups> log)
    : BackgroundService
{
    /// <summary>How long after the start the first look is taken.</summary>
    public static readonly TimeSpan First = TimeSpan.FromMinutes(1);

    /// <summary>How often it looks whether a backup is due.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromMinutes(10);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The backup {Name} failed: {Why}")]
    private static partial void Failed(ILogger log, string name, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "The daily backup broke off")]
    private static partial void Broke(ILogger log, Exception why);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var time = options.Time ?? TimeProvider.System;
        await Task.Delay(First, time, stoppingToken).ConfigureAwait(false);
        while (true)
        {
            foreach (var garden in gardens.All)
            {
                await MakeIfDue(garden.Backups, stoppingToken).ConfigureAwait(false);
            }

            await Task.Delay(Every, time, stoppingToken).ConfigureAwait(false);
        }
    }

    private async Task MakeIfDue(BackupFolder backups, CancellationToken stop)
    {
        try
        {
            if (
                await backups.MakeIfDueAsync(stop).ConfigureAwait(false) is { } made
                && (made.Fault ?? made.SecondFault) is { } fault
            )
            {
                Failed(log, made.Name, fault);
            }
        }
        catch (OperationCanceledException)
        {
            throw;
        }
#pragma warning disable CA1031 // A day without a backup must not end the days after it; the page tells that the last one is old.
        catch (Exception why)
#pragma warning restore CA1031
        {
            Broke(log, why);
        }
    }
}
