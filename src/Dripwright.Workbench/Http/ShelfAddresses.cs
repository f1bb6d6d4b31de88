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
        shelf
            .MapGet(
                "/schema/rig",
                async (GardenOfRequest here, CancellationToken stop) =>
                    Results.Text(
                        RigSchema.Write((await here.Garden.CatalogueAsync(stop)).Catalogue),
                        "application/schema+json",
                        Encoding.UTF8
                    )
            )
            .WithName("RigSchema")
            .WithSummary("JSON Schema of the rig file")
            .Produces<object>(200, "application/schema+json");
        shelf
            .MapGet(
                "/schema/catalogue",
                async (Garden garden, CancellationToken stop) =>
                    Results.Text(
                        CatalogueSchema.Write((await garden.CatalogueAsync(stop)).Catalogue),
                        "application/schema+json",
                        Encoding.UTF8
                    )
            )
            .WithName("CatalogueSchema")
            .WithSummary("JSON Schema of a catalogue file")
            .Produces<object>(200, "application/schema+json");
        shelf
            .MapGet(
                "/schema/brief",
                async (Garden garden, CancellationToken stop) =>
                    Results.Text(
                        BriefSchema.Write((await garden.CatalogueAsync(stop)).Catalogue),
                        "application/schema+json",
                        Encoding.UTF8
                    )
            )
            .WithName("BriefSchema")
            .WithSummary("JSON Schema of a brief")
            .Produces<object>(200, "application/schema+json");
    }

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
