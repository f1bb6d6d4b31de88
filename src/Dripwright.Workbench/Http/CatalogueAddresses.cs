using System.Text;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What a rig file can say and name.</summary>
internal static class CatalogueAddresses
{
    private const string Json = "application/json";

    public static void Map(RouteGroupBuilder api)
    {
        var catalogue = api.MapGroup("").WithTags("Catalogue and schema");
        catalogue
            .MapGet(
                "/catalogue/all",
                (GardenOfRequest h, string? kind, CancellationToken stop) => All(h.Garden, kind, stop)
            )
            .WithName("WholeCatalogue")
            .WithSummary(
                "The parts that a rig file of this garden can name, with their sources; kind chooses one group"
            )
            .Produces<object>();
        Schema(catalogue, "rig", "RigSchema", "the rig file", RigSchema.Write);
        Schema(catalogue, "catalogue", "CatalogueSchema", "a catalogue file", CatalogueSchema.Write);
        Schema(catalogue, "brief", "BriefSchema", "a brief", BriefSchema.Write);
    }

    private static void Schema(
        RouteGroupBuilder catalogue,
        string kind,
        string name,
        string what,
        Func<PartsCatalogue, string> write
    ) =>
        catalogue
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

    private static async Task<IResult> All(Garden garden, string? kind, CancellationToken stop)
    {
        if (kind is not null && !CatalogueJson.Kinds.Contains(kind, StringComparer.Ordinal))
        {
            throw new Refused(400, Words.Of("http.kind", string.Join(", ", CatalogueJson.Kinds)));
        }

        var groups = CatalogueListing.Of((await garden.CatalogueAsync(stop)).Catalogue);
        return Results.Text(
            CatalogueJson.Write(CatalogueJson.Kinds.Zip(groups).Where(pair => kind is null || pair.First == kind)),
            Json,
            Encoding.UTF8
        );
    }
}
