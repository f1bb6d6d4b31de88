using System.Text;
using Dripwright.Engine.Proposing;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>Rigs for a brief.</summary>
internal static class SuggestAddresses
{
    public static void Map(RouteGroupBuilder api) =>
        RigRoutes
            .Given(api.MapPost("/suggest", Suggest), "Suggest")
            .WithTags(RigRoutes.GivenTag)
            .WithSummary("Rigs for a brief, cheapest first; gives the best so far when the seconds are over")
            .Produces<object>();

    private static async Task<IResult> Suggest(
        HttpContext context,
        RequestWork work,
        GardenOfRequest here,
        int? seconds
    )
    {
        if (seconds is < 1 or > 60)
        {
            throw new Refused(400, Words.Of("http.seconds"));
        }

        var bytes = await Body.Bytes(context);
        var catalogue = (await here.Garden.CatalogueAsync(context.RequestAborted)).Catalogue;
        var reading = BriefReader.Read(bytes, "brief", catalogue);
        if (reading.Brief is not { } brief)
        {
            throw new Refused(422, Words.Of("http.brief.faults")) { Faults = reading.Faults };
        }

        var answer = await work.Search(
            stop =>
            {
                // Unlike a plan, a search that is stopped has something to show.
                using var over = CancellationTokenSource.CreateLinkedTokenSource(stop);
                over.CancelAfter(TimeSpan.FromSeconds(seconds ?? 20));
                return ProposalJson.Write(Proposer.Of(brief, catalogue, null, null, over.Token));
            },
            context.RequestAborted
        );
        return Results.Text(answer, "application/json", Encoding.UTF8);
    }
}
