using System.Globalization;
using System.Text;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What a garden has once: its own catalogue, and the parts on hand. Each is a draft, and in force once it is saved.</summary>
internal static class DocumentAddresses
{
    private const string Json = "application/json";

    public static void Map(RouteGroupBuilder api)
    {
        One(api, "catalogue", "Catalogue", "your own catalogue", garden => garden.CatalogueDraftAsync);
        One(api, "on-hand", "OnHand", "the parts on hand", garden => garden.OnHandDraftAsync);
    }

    private static void One(
        RouteGroupBuilder api,
        string place,
        string name,
        string what,
        Func<Garden, Func<CancellationToken, Task<Draft>>> open
    )
    {
        var one = api.MapGroup("/" + place).WithTags("Your own catalogue and parts on hand");
        one.MapGet(
                "",
                (HttpContext c, GardenOfRequest h, int? revision) => Fetch(c, h.Garden, open(h.Garden), revision)
            )
            .WithName(name)
            .WithSummary(
                $"The draft of {what}, with its version as ETag; revision takes a saved one, 0 the one in force"
            )
            .Produces<object>()
            .ProducesProblem(404);
        one.MapPut("", (HttpContext c, GardenOfRequest h, string? what) => Keep(c, h.Garden, open(h.Garden), what))
            .Takes(Json, Limits.TextBytes)
            .WithName("Keep" + name)
            .WithSummary($"Keeps the draft of {what}; If-Match says which version it is based on")
            .Produces<DraftAnswer>()
            .ProducesProblem(412)
            .ProducesProblem(422)
            .ProducesProblem(428);
        one.MapGet(
                "/revisions",
                (GardenOfRequest h, CancellationToken stop) => Revisions(h.Garden, open(h.Garden), stop)
            )
            .WithName(name + "Revisions")
            .WithSummary($"What was saved of {what}, the newest first: that one is in force")
            .Produces<IReadOnlyList<RevisionAnswer>>();
        one.MapPost(
                "/revisions",
                (HttpContext c, GardenOfRequest h, NewRevision why) => Save(c, h.Garden, open(h.Garden), place, why)
            )
            .Takes(Json, RigAddresses.WordsBytes)
            .Accepts<NewRevision>(Json)
            .WithName("Save" + name)
            .WithSummary($"Puts the draft of {what} in force, if it has no fault; If-Match says which version of it")
            .Produces<RevisionAnswer>(201)
            .Produces<RevisionAnswer>()
            .ProducesProblem(412)
            .ProducesProblem(422)
            .ProducesProblem(428);
    }

    private static async Task<IResult> Fetch(
        HttpContext context,
        Garden garden,
        Func<CancellationToken, Task<Draft>> open,
        int? revision
    )
    {
        var draft = await open(context.RequestAborted);
        if (revision is not { } number)
        {
            Versions.Show(context, draft);
            return Results.Text(draft.Text, Json, Encoding.UTF8);
        }

        number = number > 0 ? number : (await garden.RevisionsAsync(draft.Id, context.RequestAborted)).Count;
        var saved =
            await garden.RevisionAsync(draft.Id, number, context.RequestAborted) ?? throw Refused.NotThere("revision");
        return Results.Text(saved.Text, Json, Encoding.UTF8);
    }

    private static async Task<IResult> Keep(
        HttpContext context,
        Garden garden,
        Func<CancellationToken, Task<Draft>> open,
        string? what
    )
    {
        var draft = await open(context.RequestAborted);
        var version = Versions.Wanted(context, draft);
        var text = await Body.Text(context);
        return RigAddresses.Came(
            context,
            await garden.KeepDraftAsync(draft.Id, text, version, what ?? "over HTTP", context.RequestAborted)
        );
    }

    private static async Task<IResult> Revisions(
        Garden garden,
        Func<CancellationToken, Task<Draft>> open,
        CancellationToken stop
    )
    {
        var lines = await garden.RevisionsAsync((await open(stop)).Id, stop);
        return Results.Ok(lines.Select(line => RigAddresses.Told(line.Revision, line)).ToList());
    }

    private static async Task<IResult> Save(
        HttpContext context,
        Garden garden,
        Func<CancellationToken, Task<Draft>> open,
        string place,
        NewRevision why
    ) =>
        await RigAddresses.SaveDraft(
            context,
            garden,
            await open(context.RequestAborted),
            why,
            number => string.Create(CultureInfo.InvariantCulture, $"{Problems.Root}/{place}?revision={number}")
        );
}
