using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Household;
using Dripwright.Workbench.Setup;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Tests.Gardens;

/// <summary>Two gardens on one server, "ours" and "theirs". A header chooses, or for a browser a cookie.</summary>
internal sealed class TwoGardens : IGardens
{
    public const string Header = "X-Garden";
    public const string Cookie = "garden";
    public const string Ours = "ours";
    public const string Theirs = "theirs";

    private TwoGardens(IReadOnlyList<ServedGarden> all) => All = all;

    public IReadOnlyList<ServedGarden> All { get; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ServedGarden? Of(HttpContext context)
    {
        var wanted = context.Request.Headers[Header].ToString();
        wanted = wanted.Length > 0 ? wanted : context.Request.Cookies[Cookie];
        return All.FirstOrDefault(garden => garden.Id == wanted);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var garden in All)
        {
            await garden.DisposeAsync();
        }
    }

    /// <summary>A server with both, started on a free port.</summary>
    public static async Task<(WebApplication App, TwoGardens Gardens)> Open(string folder, bool network = false)
    {
        List<ServedGarden> all = [];
        foreach (var id in (string[])[Ours, Theirs])
        {
            var own = Directory.CreateDirectory(Path.Combine(folder, id)).FullName;
            var place = GardenPlace.File(Path.Combine(own, "garden.dripwright"));
            var garden = await Garden.OpenAsync(place, stop: Stop);
            all.Add(
                new ServedGarden(
                    id,
                    garden,
                    () => new People(own, TimeProvider.System),
                    new BackupFolder(garden, Path.Combine(own, "backups"))
                )
            );
        }

        var gardens = new TwoGardens(all);
        var options = new WorkbenchOptions
        {
            Port = 0,
            Garden = all[0].Garden.Place,
            DataFolder = folder,
            Network = network,
        };
        var app = WorkbenchHost.Build(options, gardens);
        await app.StartAsync(Stop);
        return (app, gardens);
    }
}
