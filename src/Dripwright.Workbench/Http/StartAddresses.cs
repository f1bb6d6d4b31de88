using System.Text;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>A first rig file from a few answers.</summary>
internal static class StartAddresses
{
    /// <summary>The answers. What is left out is assumed.</summary>
    /// <param name="Name">What the rig is called.</param>
    /// <param name="Units">us or metric.</param>
    /// <param name="Rows">Rows, 1 to 100.</param>
    /// <param name="Pots">Pots in each row; at most 5,000 in all rows together.</param>
    /// <param name="Spacing">From pot centre to pot centre, with its unit: 12 in, 30 cm.</param>
    /// <param name="Staggered">true for pots staggered in two lines.</param>
    /// <param name="Crop">What grows in the pots.</param>
    /// <param name="Gravity">true for a raised reservoir without a pump.</param>
    internal readonly record struct Answers(
        string? Name,
        string? Units,
        int? Rows,
        int? Pots,
        string? Spacing,
        bool? Staggered,
        string? Crop,
        bool? Gravity
    );

    public static void Map(RouteGroupBuilder api) =>
        api.MapGet("/start", Start)
            .WithTags(RigRoutes.GivenTag)
            .WithName("Start")
            .WithSummary("A first rig file from a few answers, each field with a comment; nothing is kept")
            .Produces<object>()
            .ProducesProblem(422);

    private static async Task<IResult> Start([AsParameters] Answers given, GardenOfRequest here, CancellationToken stop)
    {
        var usual = new StarterAnswers();
        var answers = usual with
        {
            Name = given.Name ?? usual.Name,
            Units = given.Units switch
            {
                null or "us" => UnitSystem.Us,
                "metric" => UnitSystem.Metric,
                _ => throw new Refused(400, Words.Of("http.units")),
            },
            Rows = given.Rows ?? usual.Rows,
            Pots = given.Pots ?? usual.Pots,
            Spacing = given.Spacing is { } spacing ? Length(spacing) : null,
            Arrangement = given.Staggered == true ? Arrangement.Staggered : Arrangement.Single,
            Crop = given.Crop ?? usual.Crop,
            Gravity = given.Gravity ?? false,
        };
        try
        {
            var catalogue = (await here.Garden.CatalogueAsync(stop)).Catalogue;
            return Results.Text(RigStarter.Text(answers, catalogue), "application/json", Encoding.UTF8);
        }
        catch (StarterException wrong)
        {
            throw new Refused(422, Words.Of("http.start.cannot", wrong.Fault.Told()));
        }
    }

    private static double? Length(string text)
    {
        var reading = QuantityText.Read(Dimension.Length, text);
        return reading.Value
            ?? throw new Refused(
                422,
                Words.Of("http.start.spacing", text, new PlanWords(UnitSystem.Metric).Of(reading.Expected()))
            );
    }
}
