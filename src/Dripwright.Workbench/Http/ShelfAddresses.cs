using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Store;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What a rig file can say and name.</summary>
internal static class ShelfAddresses
{
    private const string Json = "application/json";

    public static void Map(RouteGroupBuilder api)
    {
        var shelf = api.MapGroup("").WithTags("Catalogue and schema");
        shelf
            .MapGet("/shelf", (GardenOfRequest h, string? kind, CancellationToken stop) => Shelf(h.Garden, kind, stop))
            .WithName("Shelf")
            .WithSummary(
                "The parts that a rig file of this garden can name, with their sources; kind chooses one shelf"
            )
            .Produces<object>();
        Schema(shelf, "rig", "RigSchema", "the rig file", RigSchema.Write);
        Schema(shelf, "catalogue", "CatalogueSchema", "a catalogue file", CatalogueSchema.Write);
        Schema(shelf, "brief", "BriefSchema", "a brief", BriefSchema.Write);
    }

    private static void Schema(
        RouteGroupBuilder shelf,
        string kind,
        string name,
        string what,
        Func<PartsCatalogue, string> write
    ) =>
        shelf
            .MapGet(
                $"/schema/{kind}",
                async (GardenOfRequest here, CancellationToken stop) =>
                    Results.Text(
                        write((await here.Garden.CatalogueAsync(stop)).Catalogue),
                        "application/schema+json",
                        Encoding.UTF8
                    )
            )
            .WithName(name)
            .WithSummary($"JSON Schema of {what}")
            .Produces<object>(200, "application/schema+json");

    private static async Task<IResult> Shelf(Garden garden, string? kind, CancellationToken stop)
    {
        if (kind is not null && !CatalogueJson.Kinds.Contains(kind, StringComparer.Ordinal))
        {
            throw new Refused(400, $"kind: expected one of {string.Join(", ", CatalogueJson.Kinds)}.");
        }

        var shelves = CatalogueListing.Of((await garden.CatalogueAsync(stop)).Catalogue);
        return Results.Text(
            CatalogueJson.Write(CatalogueJson.Kinds.Zip(shelves).Where(pair => kind is null || pair.First == kind)),
            Json,
            Encoding.UTF8
        );
    }
}
