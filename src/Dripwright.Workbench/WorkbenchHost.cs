using System.Net;
using Dripwright.Store;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Http;
using Dripwright.Workbench.Pack;
using Dripwright.Workbench.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Dripwright.Workbench;

/// <summary>Builds the web host of the workbench; the program and the tests share it.</summary>
public static class WorkbenchHost
{
    /// <summary>Most bytes of any request's body. Rig files come through the page's own channel and have their own limit.</summary>
    internal const int MostBodyBytes = 2 << 20;

    /// <summary>Opens the garden and builds the host; start it with <c>StartAsync</c>.</summary>
    /// <param name="options">How to open it.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="ArgumentException">The address is not one of this machine's own.</exception>
    /// <exception cref="GardenException">The garden cannot be opened.</exception>
    public static async Task<WebApplication> BuildAsync(WorkbenchOptions options, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        var address = Loopback(options.Address);
        Directory.CreateDirectory(options.DataFolder);
        var garden = await DemoGarden.OpenAsync(options, stop).ConfigureAwait(false);
        var builder = WebApplication.CreateBuilder(
            new WebApplicationOptions
            {
                ApplicationName = options.HostAssembly,
                // Scripts and styles are found whichever folder the program is started from.
                ContentRootPath = AppContext.BaseDirectory,
                EnvironmentName = Environments.Production,
            }
        );
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.Listen(address, options.Port);
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = MostBodyBytes;
            server.Limits.MaxConcurrentConnections = 1000;
            server.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
        });
        builder.Logging.ClearProviders();
        builder.Logging.AddProvider(new LogFile(Path.Combine(options.DataFolder, LogFile.Name)));
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        AddServices(builder.Services, options, garden);
        var app = builder.Build();
        Map(app);
        return app;
    }

    private static void AddServices(IServiceCollection services, WorkbenchOptions options, Garden garden)
    {
        services.AddSingleton(options);
        services.AddSingleton(_ => garden);
        services.AddSingleton(new PlanQueue(Math.Max(2, Environment.ProcessorCount)));
        services.AddSingleton<Downloads>();
        services.AddScoped<Viewer>();
        services
            .AddDataProtection()
            .SetApplicationName("dripwright")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(options.DataFolder, "keys")));
        services
            .AddRazorComponents()
            .AddInteractiveServerComponents(circuit =>
            {
                circuit.DisconnectedCircuitMaxRetained = 100;
                circuit.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(5);
                circuit.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(30);
            })
            .AddHubOptions(hub =>
            {
                // A rig file typed as text travels as one message; its letters may take two bytes each.
                hub.MaximumReceiveMessageSize = MostBodyBytes;
            });
        services.AddAntiforgery(forgery => forgery.Cookie.SameSite = SameSiteMode.Strict);
        services.AddResponseCompression(compress =>
        {
            compress.EnableForHttps = false;
            compress.MimeTypes =
            [
                .. Microsoft.AspNetCore.ResponseCompression.ResponseCompressionDefaults.MimeTypes,
                "image/svg+xml",
                "font/ttf",
            ];
        });
        services.AddRateLimiter(Rates.Limit);
        HttpInterface.Add(services);
    }

    private static void Map(WebApplication app)
    {
        app.UseMiddleware<Trouble>();
        app.UseMiddleware<Headers>();
        app.UseStatusCodePagesWithReExecute("/not-there");
        HttpInterface.Use(app);
        app.UseRateLimiter();
        app.UseResponseCompression();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapRazorComponents<App>()
            .AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = "'none'");
        Styles.Map(app);
        app.Services.GetRequiredService<Downloads>().Map(app);
        HttpInterface.Map(app);
    }

    private static IPAddress Loopback(string address)
    {
        var parsed =
            address is "localhost" ? IPAddress.Loopback
            : IPAddress.TryParse(address, out var read) ? read
            : null;
        return parsed is not null && IPAddress.IsLoopback(parsed)
            ? parsed
            : throw new ArgumentException(
                $"\"{address}\" is not an address of this machine alone. The workbench opens only on loopback, such as 127.0.0.1: it has no signing in yet, so anyone on the network could change your garden.",
                nameof(address)
            );
    }
}
