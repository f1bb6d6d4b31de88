using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Store.Ground;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Setup;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The whole garden: exported and imported, backed up and restored, its bin and its room on the disk.</summary>
internal static class GardenAddresses
{
    private const string Json = "application/json";
    private const string Bytes = "application/octet-stream";
    private const long BackupBytes = 512L << 20;

    // A whole garden in memory is large: one at a time. What comes slowly over the line waits for nobody and keeps nobody waiting.
    private static readonly SemaphoreSlim s_turn = new(1, 1);

    public static void Map(RouteGroupBuilder api)
    {
        var garden = api.MapGroup("/garden").WithTags("The whole garden");
        garden
            .MapGet("", About)
            .WithName("Garden")
            .WithSummary("Name, units, how many rigs, and whether its file is older than the one last used")
            .Produces<GardenAnswer>();
        garden
            .MapPatch("", Settings)
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewSettings>(Json)
            .WithName("KeepSettings")
            .WithSummary("Gives the garden another name or other units; what is left out stays")
            .Produces<GardenAnswer>()
            .ProducesProblem(422);
        garden
            .MapGet("/disk", Disk)
            .WithName("Disk")
            .WithSummary("How much of the disk the garden, its backups and the log take")
            .Produces<DiskAnswer>();
        MapFiles(garden);
        MapBackups(garden);
        api.MapDelete("/bin", EmptyBin)
            .WithTags("Rigs of the garden")
            .WithName("EmptyBin")
            .WithSummary("Deletes for good what lies in the bin, with all revisions")
            .Produces<EmptiedAnswer>()
            .ProducesProblem(503);
    }

    /// <summary>Beside this name passing files of uploads and downloads lie; what a killed workbench left there is cleared at the start.</summary>
    public static string UploadPath(WorkbenchOptions options) => Path.Combine(options.DataFolder, "upload");

    private static void MapFiles(RouteGroupBuilder garden)
    {
        garden
            .MapGet("/export", Export)
            .WithName("Export")
            .WithSummary("The whole garden as one open file")
            .Produces<object>()
            .ProducesProblem(503);
        garden
            .MapPost("/import", Import)
            .Takes(Json, Limits.GardenFileBytes)
            .WithName("Import")
            .WithSummary("Adds what a garden file says, whole or not at all")
            .Produces<ImportedAnswer>()
            .ProducesProblem(422)
            .ProducesProblem(503);
        garden
            .MapGet("/backup", Backup)
            .WithName("Backup")
            .WithSummary("A backup of the garden's own file, with steps of undo and bin")
            .Produces<byte[]>(200, Bytes)
            .ProducesProblem(422)
            .ProducesProblem(503);
        garden
            .MapPost("/restore", Restore)
            .Takes(Bytes, BackupBytes)
            .WithName("Restore")
            .WithSummary(
                "Puts a backup in the place of the garden; it is checked first, and what it replaces is kept beside it"
            )
            .Produces(204)
            .ProducesProblem(422)
            .ProducesProblem(503);
    }

    private static void MapBackups(RouteGroupBuilder garden)
    {
        garden
            .MapGet("/backups", (GardenOfRequest here) => Results.Ok(BackupsAnswer.Of(here.Backups.Status())))
            .WithName("Backups")
            .WithSummary("The daily backups, the newest first, and when the last good one was made")
            .Produces<BackupsAnswer>();
        garden
            .MapPost("/backups", MakeBackup)
            .WithName("MakeBackup")
            .WithSummary("Makes a backup now and tries to restore it; fault says what was wrong with it")
            .Produces<BackupEntry>()
            .ProducesProblem(503);
        garden
            .MapGet(
                "/backups/{name}",
                (GardenOfRequest here, string name) =>
                    here.Backups.PathOf(name) is { } path
                        ? Results.File(path, Bytes, name)
                        : throw Refused.NotThere("backup")
            )
            .WithName("FetchBackup")
            .WithSummary("One of the daily backups")
            .Produces<byte[]>(200, Bytes)
            .ProducesProblem(404);
    }

    private static async Task<IResult> About(GardenOfRequest here, CancellationToken stop)
    {
        var settings = await here.Garden.SettingsAsync(stop);
        var units = settings.Units == UnitSystem.Us ? "us" : "metric";
        return Results.Ok(
            new GardenAnswer(settings.Name, units, (await here.Garden.RigsAsync(stop)).Count, here.Garden.Older)
        );
    }

    private static async Task<IResult> Settings(GardenOfRequest here, NewSettings wanted, CancellationToken stop)
    {
        var settings = await here.Garden.SettingsAsync(stop);
        await here.Garden.KeepSettingsAsync(
            settings with
            {
                Name = wanted.Name ?? settings.Name,
                Units = wanted.Units switch
                {
                    null => settings.Units,
                    "us" => UnitSystem.Us,
                    "metric" => UnitSystem.Metric,
                    _ => throw new Refused(422, Words.Of("http.units")),
                },
            },
            stop
        );
        return await About(here, stop);
    }

    private static async Task<IResult> Disk(GardenOfRequest here, WorkbenchOptions options, CancellationToken stop)
    {
        var use = await here.Garden.DiskUseAsync(stop);
        return Results.Ok(
            new DiskAnswer(use.Garden, use.Beside, here.Backups.Bytes(), LogFile.Bytes(options.DataFolder), use.Free)
        );
    }

    private static async Task<IResult> EmptyBin(GardenOfRequest here, CancellationToken stop) =>
        Results.Ok(new EmptiedAnswer(await here.Garden.EmptyBinAsync(stop: stop)));

    private static async Task<IResult> MakeBackup(GardenOfRequest here, CancellationToken stop) =>
        Results.Ok(await here.Backups.MakeAsync(stop));

    private static async Task<IResult> Export(
        HttpContext context,
        GardenOfRequest here,
        WorkbenchOptions options,
        CancellationToken stop
    )
    {
        var path = PassingFile(context, options);
        await Alone(
            async () =>
            {
                await using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
                await here.Garden.ExportAsync(file, stop);
                return true;
            },
            stop
        );
        return Results.File(path, Json, "garden.json");
    }

    private static async Task<IResult> Import(HttpContext context, GardenOfRequest here, WorkbenchOptions options)
    {
        var stop = context.RequestAborted;
        var path = await Upload(context, options);
        var imported = await Alone(
            async () =>
            {
                await using var file = new FileStream(path, FileMode.Open, FileAccess.Read);
                return await here.Garden.ImportAsync(file, Words.Of("http.garden-file"), stop);
            },
            stop
        );
        return Results.Ok(new ImportedAnswer(imported.Rigs, imported.Others, imported.Remarks));
    }

    private static async Task<IResult> Backup(
        HttpContext context,
        GardenOfRequest here,
        WorkbenchOptions options,
        CancellationToken stop
    )
    {
        var path = PassingFile(context, options);
        await here.Garden.BackupAsync(path, stop: stop);
        return Results.File(path, Bytes, "garden.dripwright");
    }

    private static async Task<IResult> Restore(HttpContext context, GardenOfRequest here, WorkbenchOptions options)
    {
        await here.Garden.RestoreAsync(await Upload(context, options), context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<string> Upload(HttpContext context, WorkbenchOptions options)
    {
        var path = PassingFile(context, options);
        await using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        await context.Request.Body.CopyToAsync(file, context.RequestAborted);
        return path;
    }

    // The name is ours: nothing in a request ever names a file of this machine. It goes with the request.
    private static string PassingFile(HttpContext context, WorkbenchOptions options)
    {
        var passing = Passing.Beside(UploadPath(options));
        context.Response.RegisterForDispose(passing);
        return passing.At("garden");
    }

    private static async Task<T> Alone<T>(Func<Task<T>> work, CancellationToken stop)
    {
        if (!await s_turn.WaitAsync(TimeSpan.FromSeconds(20), stop))
        {
            throw new Refused(503, Words.Of("http.garden.busy")) { RetryAfter = 20 };
        }

        try
        {
            return await work();
        }
        finally
        {
            s_turn.Release();
        }
    }
}
