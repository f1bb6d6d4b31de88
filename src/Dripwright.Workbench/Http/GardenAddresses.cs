using Dripwright.Engine.Units;
using Dripwright.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The whole garden as one file: handed out and taken in, copied and brought back.</summary>
internal static class GardenAddresses
{
    private const string Json = "application/json";
    private const string Bytes = "application/octet-stream";
    private const long CopyBytes = 512L << 20;

    // Whole gardens are large: one at a time, so that the memory holds.
    private static readonly SemaphoreSlim s_turn = new(1, 1);

    public static void Map(RouteGroupBuilder api)
    {
        var garden = api.MapGroup("/garden").WithTags("The whole garden");
        garden
            .MapGet("", About)
            .WithName("Garden")
            .WithSummary("Name, units and how many rigs")
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
            .MapGet("/file", HandOut)
            .WithName("HandOut")
            .WithSummary("The whole garden as one open file")
            .Produces<object>()
            .ProducesProblem(503);
        garden
            .MapPost("/file", TakeIn)
            .Takes(Json, Limits.GardenFileBytes)
            .WithName("TakeIn")
            .WithSummary("Adds what a garden file says, whole or not at all")
            .Produces<TakenInAnswer>()
            .ProducesProblem(422)
            .ProducesProblem(503);
        garden
            .MapGet("/copy", Copy)
            .WithName("Copy")
            .WithSummary("A copy of the garden's own file, with steps of undo and bin")
            .Produces<byte[]>(200, Bytes)
            .ProducesProblem(422)
            .ProducesProblem(503);
        garden
            .MapPost("/copy", BringBack)
            .Takes(Bytes, CopyBytes)
            .WithName("BringBack")
            .WithSummary(
                "Puts a copy in the place of the garden; it is checked first, and what it replaces is kept beside it"
            )
            .Produces(204)
            .ProducesProblem(422)
            .ProducesProblem(503);
    }

    private static async Task<IResult> About(Garden garden, CancellationToken stop)
    {
        var settings = await garden.SettingsAsync(stop);
        var units = settings.Units == UnitSystem.Us ? "us" : "metric";
        return Results.Ok(new GardenAnswer(settings.Name, units, (await garden.RigsAsync(stop)).Count));
    }

    private static async Task<IResult> Settings(Garden garden, NewSettings wanted, CancellationToken stop)
    {
        var settings = await garden.SettingsAsync(stop);
        await garden.KeepSettingsAsync(
            settings with
            {
                Name = wanted.Name ?? settings.Name,
                Units = wanted.Units switch
                {
                    null => settings.Units,
                    "us" => UnitSystem.Us,
                    "metric" => UnitSystem.Metric,
                    _ => throw new Refused(422, "units: expected us or metric."),
                },
            },
            stop
        );
        return await About(garden, stop);
    }

    private static Task<IResult> HandOut(Garden garden, WorkbenchOptions options, CancellationToken stop) =>
        Alone(
            async () =>
            {
                var file = Passing(options);
                try
                {
                    await garden.HandOutAsync(file, stop);
                }
                catch
                {
                    await file.DisposeAsync();
                    throw;
                }

                file.Position = 0;
                return Results.File(file, Json, "garden.json");
            },
            stop
        );

    private static Task<IResult> TakeIn(HttpContext context, Garden garden) =>
        Alone(
            async () =>
            {
                var taken = await garden.TakeInAsync(context.Request.Body, "garden file", context.RequestAborted);
                return Results.Ok(new TakenInAnswer(taken.Rigs, taken.Others, taken.Remarks));
            },
            context.RequestAborted
        );

    private static Task<IResult> Copy(Garden garden, WorkbenchOptions options, CancellationToken stop) =>
        Alone(
            async () =>
            {
                OnlyAFile(garden);
                var path = PassingPath(options);
                try
                {
                    await garden.CopyToAsync(path, stop: stop);
                    return Results.File(
                        new FileStream(
                            path,
                            FileMode.Open,
                            FileAccess.Read,
                            FileShare.Read | FileShare.Delete,
                            1 << 16,
                            FileOptions.DeleteOnClose | FileOptions.Asynchronous
                        ),
                        Bytes,
                        "garden.dripwright"
                    );
                }
                catch
                {
                    File.Delete(path);
                    throw;
                }
            },
            stop
        );

    private static Task<IResult> BringBack(HttpContext context, Garden garden, WorkbenchOptions options) =>
        Alone(
            async () =>
            {
                OnlyAFile(garden);
                var path = PassingPath(options);
                try
                {
                    var copy = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
                    await using (copy)
                    {
                        await context.Request.Body.CopyToAsync(copy, context.RequestAborted);
                    }

                    await garden.BringBackAsync(path, context.RequestAborted);
                    return Results.NoContent();
                }
                catch (GardenException trouble)
                {
                    // Whoever sent the copy knows it by no path of this machine.
                    throw new GardenException(
                        trouble.Kind,
                        trouble.Message.Replace(path, "the copy", StringComparison.Ordinal),
                        trouble
                    );
                }
                finally
                {
                    File.Delete(path);
                }
            },
            context.RequestAborted
        );

    private static void OnlyAFile(Garden garden)
    {
        if (garden.Place.Path is null)
        {
            throw new Refused(422, "This garden is kept on a database server: copy it with the server's own tools.");
        }
    }

    private static async Task<IResult> Alone(Func<Task<IResult>> work, CancellationToken stop)
    {
        if (!await s_turn.WaitAsync(TimeSpan.FromSeconds(20), stop))
        {
            throw new Refused(503, "Another garden file is passing just now. Ask again in a moment.")
            {
                RetryAfter = 20,
            };
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

    private static FileStream Passing(WorkbenchOptions options) =>
        new(
            PassingPath(options),
            FileMode.CreateNew,
            FileAccess.ReadWrite,
            FileShare.Delete,
            1 << 16,
            FileOptions.DeleteOnClose | FileOptions.Asynchronous
        );

    // The name is ours: nothing in a request ever names a file of this machine.
    private static string PassingPath(WorkbenchOptions options) =>
        Path.Combine(options.DataFolder, $"passing-{Path.GetRandomFileName()}");
}
