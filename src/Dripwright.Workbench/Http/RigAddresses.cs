using System.Globalization;
using System.Text;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The rigs of the garden: list, fetch, keep, name, throw away, and their revisions.</summary>
internal static class RigAddresses
{
    private const string Json = "application/json";
    private const string Tag = "Rigs of the garden";

    /// <summary>Largest body that holds only a name or a note.</summary>
    public const int WordsBytes = 16 << 10;

    /// <summary>A rig of the garden.</summary>
    /// <exception cref="Refused">There is none of that number.</exception>
    public static async Task<Draft> Rig(Garden garden, int id, CancellationToken stop) =>
        await garden.DraftAsync(id, stop) is { Kind: DocumentKinds.Rig } draft ? draft : throw Refused.NotThere("rig");

    public static void Map(RouteGroupBuilder api)
    {
        var rigs = api.MapGroup("/rigs").WithTags(Tag);
        MapRigs(rigs);
        MapSteps(rigs);
        MapRevisions(rigs);
        MapBin(api.MapGroup("/bin").WithTags(Tag));
    }

    private static void MapRigs(RouteGroupBuilder rigs)
    {
        rigs.MapGet("", List).WithName("Rigs").WithSummary("The rigs, by name").Produces<IReadOnlyList<RigAnswer>>();
        rigs.MapPost("", Add)
            .Takes(Json, Limits.TextBytes)
            .WithName("AddRig")
            .WithSummary("Adds a rig file as a rig; faults and all, as a draft")
            .Produces<DraftAnswer>(201)
            .ProducesProblem(422);
        rigs.MapGet("/{id:int}", Fetch)
            .WithName("Rig")
            .WithSummary("The rig file as it is now; its version is the ETag")
            .Produces<object>()
            .ProducesProblem(404);
        rigs.MapPut("/{id:int}", Keep)
            .Takes(Json, Limits.TextBytes)
            .WithName("KeepRig")
            .WithSummary("Keeps a rig file as the draft; If-Match says which version it is based on")
            .Produces<DraftAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(422)
            .ProducesProblem(428);
        rigs.MapPatch("/{id:int}", Rename)
            .Takes(Json, WordsBytes)
            .Accepts<NewName>(Json)
            .WithName("RenameRig")
            .WithSummary("Gives the rig another name in the garden")
            .Produces<DraftAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(422);
        rigs.MapDelete("/{id:int}", Remove)
            .WithName("RemoveRig")
            .WithSummary("Puts the rig into the bin")
            .Produces(204)
            .ProducesProblem(404)
            .ProducesProblem(412);
    }

    private static void MapSteps(RouteGroupBuilder rigs)
    {
        rigs.MapPost(
                "/{id:int}/undo",
                (HttpContext c, GardenOfRequest h, int id) => Step(c, h.Garden, id, h.Garden.UndoAsync)
            )
            .WithName("UndoRig")
            .WithSummary("Goes back one step; If-Match says from which version")
            .Produces<DraftAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(428);
        rigs.MapPost(
                "/{id:int}/redo",
                (HttpContext c, GardenOfRequest h, int id) => Step(c, h.Garden, id, h.Garden.RedoAsync)
            )
            .WithName("RedoRig")
            .WithSummary("Goes forward to what was undone last; If-Match says from which version")
            .Produces<DraftAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(428);
        rigs.MapGet("/{id:int}/steps", Steps)
            .WithName("Steps")
            .WithSummary("What the draft once was, the newest first; undo and redo need not reach it")
            .Produces<IReadOnlyList<StepAnswer>>()
            .ProducesProblem(404);
        rigs.MapPost(
                "/{id:int}/steps/{number:int}",
                (HttpContext c, GardenOfRequest h, int id, int number) =>
                    Step(c, h.Garden, id, (at, version, stop) => h.Garden.GoToStepAsync(at, number, version, stop))
            )
            .WithName("GoToStep")
            .WithSummary(
                "Makes the draft what it was at a step; undo takes that back. If-Match says from which version"
            )
            .Produces<DraftAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(428);
    }

    private static void MapRevisions(RouteGroupBuilder rigs)
    {
        rigs.MapGet("/{id:int}/revisions", Revisions)
            .WithName("Revisions")
            .WithSummary("The saved revisions, the newest first, each with what it changed")
            .Produces<IReadOnlyList<RevisionAnswer>>()
            .ProducesProblem(404);
        rigs.MapPost("/{id:int}/revisions", Save)
            .Takes(Json, WordsBytes)
            .Accepts<NewRevision>(Json)
            .WithName("SaveRevision")
            .WithSummary("Saves the draft for good, if it has no fault; If-Match says which version of it")
            .Produces<RevisionAnswer>(201)
            .Produces<RevisionAnswer>()
            .ProducesProblem(404)
            .ProducesProblem(412)
            .ProducesProblem(422)
            .ProducesProblem(428);
        rigs.MapGet("/{id:int}/revisions/{number:int}", Revision)
            .WithName("Revision")
            .WithSummary("The rig file of a saved revision")
            .Produces<object>()
            .ProducesProblem(404);
    }

    private static void MapBin(RouteGroupBuilder bin)
    {
        bin.MapGet("", Bin).WithName("Bin").WithSummary("What was thrown away").Produces<IReadOnlyList<RigAnswer>>();
        bin.MapPost("/{id:int}/restore", Restore)
            .WithName("RestoreRig")
            .WithSummary("Takes a rig out of the bin, as it was")
            .Produces<DraftAnswer>()
            .ProducesProblem(404);
    }

    private static async Task<IResult> List(GardenOfRequest here, CancellationToken stop) =>
        Results.Ok((await here.Garden.RigsAsync(stop)).Select(RigAnswer.Of).ToList());

    private static async Task<IResult> Bin(GardenOfRequest here, CancellationToken stop) =>
        Results.Ok(
            (await here.Garden.BinAsync(stop))
                .Where(entry => entry.Kind == DocumentKinds.Rig)
                .Select(RigAnswer.Of)
                .ToList()
        );

    private static async Task<IResult> Add(HttpContext context, GardenOfRequest here, string name)
    {
        var draft = await here.Garden.AddRigAsync(name, await Body.Text(context), context.RequestAborted);
        Versions.Show(context, draft);
        var address = string.Create(CultureInfo.InvariantCulture, $"{Problems.Root}/rigs/{draft.Id}");
        return Results.Created(address, DraftAnswer.Of(draft));
    }

    private static async Task<IResult> Fetch(HttpContext context, GardenOfRequest here, int id)
    {
        var draft = await Rig(here.Garden, id, context.RequestAborted);
        Versions.Show(context, draft);
        return Results.Text(draft.Text, Json, Encoding.UTF8);
    }

    private static async Task<IResult> Keep(HttpContext context, GardenOfRequest here, int id, string? what)
    {
        var draft = await Rig(here.Garden, id, context.RequestAborted);
        var version = Versions.Wanted(context, draft);
        var text = await Body.Text(context);
        return Came(
            context,
            await here.Garden.KeepDraftAsync(id, text, version, what ?? "over HTTP", context.RequestAborted)
        );
    }

    private static async Task<IResult> Step(
        HttpContext context,
        Garden garden,
        int id,
        Func<int, int, CancellationToken, Task<DraftOutcome>> go
    )
    {
        var draft = await Rig(garden, id, context.RequestAborted);
        return Came(context, await go(id, Versions.Wanted(context, draft), context.RequestAborted));
    }

    private static async Task<IResult> Rename(HttpContext context, GardenOfRequest here, int id, NewName name)
    {
        Versions.Check(context, await Rig(here.Garden, id, context.RequestAborted));
        if (string.IsNullOrWhiteSpace(name.Name))
        {
            throw new Refused(422, Words.Of("http.name"));
        }

        await here.Garden.RenameAsync(id, name.Name, context.RequestAborted);
        var draft = await Rig(here.Garden, id, context.RequestAborted);
        Versions.Show(context, draft);
        return Results.Ok(DraftAnswer.Of(draft));
    }

    private static async Task<IResult> Remove(HttpContext context, GardenOfRequest here, int id)
    {
        Versions.Check(context, await Rig(here.Garden, id, context.RequestAborted));
        await here.Garden.RemoveRigAsync(id, context.RequestAborted);
        return Results.NoContent();
    }

    private static async Task<IResult> Restore(HttpContext context, GardenOfRequest here, int id)
    {
        if (
            (await here.Garden.BinAsync(context.RequestAborted)).All(entry =>
                entry.Id != id || entry.Kind != DocumentKinds.Rig
            )
        )
        {
            throw Refused.NotThere("bin");
        }

        await here.Garden.RestoreRigAsync(id, context.RequestAborted);
        var draft = await Rig(here.Garden, id, context.RequestAborted);
        Versions.Show(context, draft);
        return Results.Ok(DraftAnswer.Of(draft));
    }

    private static async Task<IResult> Revisions(GardenOfRequest here, int id, CancellationToken stop)
    {
        await Rig(here.Garden, id, stop);
        return Results.Ok(
            (await here.Garden.RevisionsAsync(id, stop)).Select(line => Told(line.Revision, line)).ToList()
        );
    }

    private static async Task<IResult> Revision(GardenOfRequest here, int id, int number, CancellationToken stop)
    {
        await Rig(here.Garden, id, stop);
        var saved = await here.Garden.RevisionAsync(id, number, stop) ?? throw Refused.NotThere("revision");
        return Results.Text(saved.Text, Json, Encoding.UTF8);
    }

    private static async Task<IResult> Steps(GardenOfRequest here, int id, CancellationToken stop)
    {
        await Rig(here.Garden, id, stop);
        return Results.Ok(
            (await here.Garden.StepsAsync(id, stop))
                .Reverse()
                .Select(step => new StepAnswer(step.Number, step.At, step.What, step.Who, step.IsNow))
                .ToList()
        );
    }

    private static async Task<IResult> Save(HttpContext context, GardenOfRequest here, int id, NewRevision why) =>
        await SaveDraft(
            context,
            here.Garden,
            await Rig(here.Garden, id, context.RequestAborted),
            why,
            number => string.Create(CultureInfo.InvariantCulture, $"{Problems.Root}/rigs/{id}/revisions/{number}")
        );

    /// <summary>Saves a revision of a draft.</summary>
    /// <param name="context">The request.</param>
    /// <param name="garden">The garden.</param>
    /// <param name="draft">The draft.</param>
    /// <param name="why">Who saves it, and why.</param>
    /// <param name="address">Where the revision of a number is fetched.</param>
    public static async Task<IResult> SaveDraft(
        HttpContext context,
        Garden garden,
        Draft draft,
        NewRevision why,
        Func<int, string> address
    )
    {
        var outcome = await garden.SaveRevisionAsync(
            draft.Id,
            Versions.Wanted(context, draft),
            why.Who ?? "",
            why.Note ?? "",
            context.RequestAborted
        );
        return outcome switch
        {
            RevisionOutcome.Saved saved => Results.Created(address(saved.Revision.Number), Told(saved.Revision)),
            RevisionOutcome.Unchanged same => Results.Ok(Told(same.Newest)),
            RevisionOutcome.Faulty faulty => throw new Refused(422, Words.Of("http.draft.faults"))
            {
                Faults = faulty.Faults,
            },
            RevisionOutcome.Overtaken other => throw Versions.Overtaken(other.Current),
            RevisionOutcome.Refused refused => throw new Refused(422, refused.Why),
            _ => throw Refused.NotThere("any-more"),
        };
    }

    /// <summary>A revision as it is told.</summary>
    public static RevisionAnswer Told(Revision revision, RevisionLine? line = null) =>
        new(revision.Number, revision.At, revision.Who, revision.Note, line?.Changes ?? [], line?.Unread);

    /// <summary>What came of changing a draft.</summary>
    public static IResult Came(HttpContext context, DraftOutcome outcome)
    {
        switch (outcome)
        {
            case DraftOutcome.Kept kept:
                Versions.Show(context, kept.Draft);
                return Results.Ok(DraftAnswer.Of(kept.Draft));
            case DraftOutcome.Overtaken other:
                throw Versions.Overtaken(other.Current);
            case DraftOutcome.Refused refused:
                throw new Refused(422, refused.Why);
            default:
                throw Refused.NotThere("any-more");
        }
    }
}
