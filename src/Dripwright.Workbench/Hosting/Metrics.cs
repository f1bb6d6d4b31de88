using System.Diagnostics.Metrics;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;

namespace Dripwright.Workbench.Hosting;

/// <summary>
/// Numbers about the running program for somebody who watches over it, sent by OpenTelemetry's own protocol (over HTTP) to a collector. Off
/// unless an address is given. They are counts and times: no rig, no name and no address of a person is among them.
/// </summary>
internal static class Metrics
{
    /// <summary>Name of our own meter.</summary>
    public const string Name = "Dripwright";

    private static readonly Meter s_meter = new(Name);

    /// <summary>How long plans, drawings and packs take, without their wait for a turn.</summary>
    public static Histogram<double> Work { get; } =
        s_meter.CreateHistogram<double>("dripwright.work.duration", "s", "How long plans, drawings and packs take.");

    /// <summary>How long they wait for their turn.</summary>
    public static Histogram<double> Wait { get; } =
        s_meter.CreateHistogram<double>(
            "dripwright.work.wait",
            "s",
            "How long plans, drawings and packs wait for their turn."
        );

    /// <summary>Sends them; nothing of the exporter is loaded where no address is given.</summary>
    /// <param name="services">The host's services.</param>
    /// <param name="collector">The collector's address, such as http://127.0.0.1:4318; null for off.</param>
    public static void Add(IServiceCollection services, Uri? collector)
    {
        if (collector is not null)
        {
            Send(services, collector);
        }
    }

    private static void Send(IServiceCollection services, Uri collector) =>
        services
            .AddOpenTelemetry()
            .ConfigureResource(resource =>
                resource.AddService(
                    "dripwright",
                    serviceVersion: typeof(Metrics).Assembly.GetName().Version?.ToString(3)
                )
            )
            .WithMetrics(metrics =>
                metrics
                    .AddMeter(
                        Name,
                        "System.Runtime",
                        "Microsoft.AspNetCore.Hosting",
                        "Microsoft.AspNetCore.Server.Kestrel"
                    )
                    .AddOtlpExporter(
                        (exporter, reader) =>
                        {
                            exporter.Protocol = OtlpExportProtocol.HttpProtobuf;
                            exporter.Endpoint = new Uri(collector, "/v1/metrics");
                            reader.PeriodicExportingMetricReaderOptions.ExportIntervalMilliseconds = 15_000;
                        }
                    )
            );
}
