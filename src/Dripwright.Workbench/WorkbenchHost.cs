using System.Globalization;
using System.Net;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Files;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Http;
using Dripwright.Workbench.Setup;
using Dripwright.Workbench.Shared;
using Dripwright.Workbench.SignIn;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Server.Circuits;
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
    /// <exception cref="ArgumentException">The address is not one of this machine's own, and it is not to open to the network.</exception>
    /// <exception cref="GardenException">The garden cannot be opened.</exception>
    /// <exception cref="EncryptionException">The certificate cannot be used.</exception>
    public static async Task<WebApplication> BuildAsync(WorkbenchOptions options, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        _ = Checked(options.Address, options.Network);
        // Before anything is made or opened.
        var served = new ServedCertificate(options);
        MakeFolder(options.DataFolder);
        Passing.Sweep(GardenAddresses.UploadPath(options));
        var garden = await DemoGarden.OpenAsync(options, stop).ConfigureAwait(false);
        var time = options.Time ?? TimeProvider.System;
        return Build(
            options,
            new OneGarden(
                new ServedGarden(
                    ServedGarden.Only,
                    garden,
                    () => new People(options.DataFolder, time),
                    new BackupFolder(
                        garden,
                        BackupFolder.Usual(options.Garden, options.DataFolder),
                        options.CopiesTo,
                        options.Time
                    )
                )
            ),
            served
        );
    }

    /// <summary>Builds the host for gardens that are open already; it closes them when it ends.</summary>
    internal static WebApplication Build(
        WorkbenchOptions options,
        IGardens gardens,
        ServedCertificate? certificate = null
    )
    {
        var served = certificate ?? new ServedCertificate(options);
        var address = Checked(options.Address, options.Network);
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
        var limit = new AddressLimit(options.TrustedProxies);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.Listen(
                address,
                options.Port,
                listen =>
                {
                    limit.Hold(listen);
                    TlsOrPlain.Listen(listen, served);
                }
            );
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = MostBodyBytes;
            server.Limits.MaxConcurrentConnections = AddressLimit.MostOfAll;
            server.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
        });
        builder.Logging.ClearProviders();
        builder.Logging.AddProvider(new LogFile(Path.Combine(options.DataFolder, LogFile.Name), options.Time));
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        AddServices(builder.Services, options, gardens);
        Encrypting.Add(builder.Services, served);
        var app = builder.Build();
        foreach (var garden in app.Services.GetRequiredService<IGardens>().All.Where(_ => options.AsksWho))
        {
            // Read now, so that a spoilt file of people is told at the start.
            _ = garden.People;
        }

        Map(app, options, limit);
        return app;
    }

    /// <summary>A code with which one more person can make an account at the page for signing in; it holds for a day.</summary>
    /// <param name="app">A workbench that is open to the network.</param>
    /// <param name="onlyFirst">Only where nobody has an account yet; null is given otherwise.</param>
    public static string? CodeForNewPerson(WebApplication app, bool onlyFirst = true)
    {
        ArgumentNullException.ThrowIfNull(app);
        // It is for the grower who opened the workbench, whose garden is alone on its server.
        var people = app.Services.GetRequiredService<IGardens>().All.Single().People;
        return onlyFirst && !people.IsEmpty ? null : people.NewCode(Role.Owner, new Visitor(""));
    }

    /// <summary>Writes the page that lets its reader's browser in, in a file that only the program's own account can read.</summary>
    /// <param name="app">A workbench that has started.</param>
    /// <param name="address">Where it is open.</param>
    /// <returns>The file; null where the workbench is not for its own account only.</returns>
    public static string? PageToOpen(WebApplication app, string address)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetService<LocalPass>()?.Open(address);
    }

    /// <summary>The garden of a workbench that serves one.</summary>
    /// <param name="app">A workbench that <see cref="BuildAsync"/> made.</param>
    public static Garden GardenOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<IGardens>().All.Single().Garden;
    }

    /// <summary>The certificate that a workbench shows; null where it does not encrypt.</summary>
    /// <param name="app">The workbench.</param>
    public static ServerCertificate? CertificateOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return app.Services.GetRequiredService<ServedCertificate>().Now;
    }

    /// <summary>What the owner must hear of the certificate, one sentence each.</summary>
    /// <param name="app">The workbench.</param>
    public static IReadOnlyList<string> ConcernsOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return [.. app.Services.GetRequiredService<ServedCertificate>().Concerns.Select(one => one.Text)];
    }

    private static void AddServices(IServiceCollection services, WorkbenchOptions options, IGardens gardens)
    {
        services.AddSingleton(options);
        // Given by the container, so that it closes them.
        services.AddSingleton(_ => gardens);
        services.AddScoped<GardenOfRequest>();
        services.AddSingleton(_ => new WorkHost());
        services.AddSingleton<KeptPlans>();
        services.AddScoped<PageWork>();
        services.AddScoped<RequestWork>();
        services.AddSingleton(new WaitingFiles(options.Time));
        services.AddScoped<Downloads>();
        services.AddHostedService<DailyBackups>();
        services.AddScoped<Viewer>();
        services.AddScoped<Focus>();
        services.AddScoped<PageNumber>();
        services.AddScoped<CircuitHandler>(page => page.GetRequiredService<PageNumber>());
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
        services.AddAntiforgery(forgery =>
        {
            forgery.Cookie.SameSite = SameSiteMode.Strict;
            forgery.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
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
        Health.Add(services);
        Metrics.Add(services, options.MetricsTo);
        Door.Add(services);
        if (options.OnlyMe)
        {
            services.AddSingleton(_ => new LocalPass(options.DataFolder));
        }
    }

    private static void Map(WebApplication app, WorkbenchOptions options, AddressLimit limit)
    {
        var isOpenToNetwork = options.Network;
        TrustedProxies.Use(app, options.TrustedProxies);
        limit.Use(app);
        app.Use(
            async (context, next) =>
            {
                // It flows with the request, and from the connection of an open page into all that this does.
                CultureInfo.CurrentUICulture = Languages.OfRequest(context.Request.Headers.AcceptLanguage);
                await next(context).ConfigureAwait(false);
            }
        );
        app.UseMiddleware<Trouble>();
        app.UseMiddleware<Headers>();
        Encrypting.Use(app);
        app.UseMiddleware<ChooseGarden>();
        app.UseStatusCodePagesWithReExecute("/not-there");
        // A form that was refused must not be sent on to the page that says so.
        app.UseWhen(
            context => !HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method),
            sent =>
                sent.UseStatusCodePages(async told =>
                {
                    var answer = told.HttpContext.Response;
                    answer.ContentType = "text/plain; charset=utf-8";
                    await answer.WriteAsync(Words.Of("signin.refused", answer.StatusCode)).ConfigureAwait(false);
                })
        );
        HttpInterface.Use(app);
        app.UseMiddleware<SameOrigin>();
        app.UseRateLimiter();
        if (options.AsksWho)
        {
            app.UseAuthentication();
            app.UseMiddleware<Door>();
        }

        app.UseResponseCompression();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapRazorComponents<App>()
            .AddInteractiveServerRenderMode(mode => mode.ContentSecurityFrameAncestorsPolicy = "'none'");
        Styles.Map(app);
        Health.Map(app);
        Downloads.Map(app);
        CertificateAddresses.Map(app);
        HttpInterface.Map(app);
        if (options.AsksWho)
        {
            DoorForms.Map(app);
        }
    }

    // What is made here is for the program's own account; a folder that is there keeps the rights it was given.
    private static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
        }
        else
        {
            Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private static IPAddress Checked(string address, bool network)
    {
        var parsed =
            address is "localhost" ? IPAddress.Loopback
            : IPAddress.TryParse(address, out var read) ? read
            : null;
        return parsed is not null && (network || IPAddress.IsLoopback(parsed))
            ? parsed
            : throw new ArgumentException(Words.Of("open.address", address), nameof(address));
    }
}
