using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Setup;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>A workbench of its own on a free port, with a garden in a temporary folder.</summary>
internal sealed class Bench : IAsyncDisposable
{
    private Bench(WebApplication app, string folder)
    {
        App = app;
        Folder = folder;
    }

    public WebApplication App { get; }

    public string Folder { get; }

    public string Url => App.Urls.First();

    public Garden Garden => App.Services.GetRequiredService<IGardens>().All[0].Garden;

    /// <summary>Who may come in.</summary>
    public People People => App.Services.GetRequiredService<IGardens>().All[0].People;

    public static async Task<Bench> Open(
        string? folder = null,
        TimeSpan? keepAfter = null,
        bool withDemo = true,
        bool network = false,
        TimeProvider? time = null,
        int port = 0,
        Func<WorkbenchOptions, WorkbenchOptions>? with = null,
        bool onlyMe = false
    )
    {
        folder ??= Directory.CreateTempSubdirectory("dripwright-bench-").FullName;
        var app = await WorkbenchHost.BuildAsync(
            (with ?? (same => same))(
                new WorkbenchOptions
                {
                    Port = port,
                    Garden = GardenPlace.File(Path.Combine(folder, "garden.dripwright")),
                    DataFolder = folder,
                    KeepAfter = keepAfter ?? TimeSpan.FromMilliseconds(300),
                    WithDemo = withDemo,
                    // The tests reach it on loopback; whether it asks for signing in does not depend on that.
                    Network = network,
                    OnlyMe = onlyMe,
                    Time = time,
                }
            ),
            TestContext.Current.CancellationToken
        );
        await app.StartAsync(TestContext.Current.CancellationToken);
        return new Bench(app, folder);
    }

    /// <summary>Stops the host and leaves its folder, to be opened again.</summary>
    public async Task<string> Stop()
    {
        await App.StopAsync(TestContext.Current.CancellationToken);
        await App.DisposeAsync();
        return Folder;
    }

    public async ValueTask DisposeAsync()
    {
        await Stop();
        Directory.Delete(Folder, recursive: true);
    }
}
