using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Language.Report;
using Dripwright.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The feed solution of a rig: what to weigh, what a reading asks for, and the weeks ahead.</summary>
internal static class FeedingAddresses
{
    private const string Json = "application/json";

    /// <summary>A reading of the tank.</summary>
    /// <param name="Ec">Strength read, such as 1.6 dS/m; with penScale also 1100 ppm.</param>
    /// <param name="PenScale">Scale of a pen that shows ppm: 500, 640 or 700.</param>
    /// <param name="Ph">pH read, such as 6.4.</param>
    /// <param name="Volume">Water in the tank, such as 80 L or 20 gal.</param>
    /// <param name="Temperature">Temperature of the water; 20 C where it is left out.</param>
    /// <param name="Days">Days since the tank was last mixed fresh, for what is to be let out.</param>
    /// <param name="Sodium">Sodium measured in the tank, such as 120 mg/L.</param>
    internal readonly record struct TankQuery(
        string? Ec,
        string? PenScale,
        string? Ph,
        string? Volume,
        string? Temperature,
        string? Days,
        string? Sodium
    );

    /// <summary>Two readings of the tank and what was poured in between.</summary>
    /// <param name="FirstEc">Strength at the first reading.</param>
    /// <param name="FirstVolume">Water in the tank then.</param>
    /// <param name="SecondEc">Strength at the second reading.</param>
    /// <param name="SecondVolume">Water in the tank then.</param>
    /// <param name="PenScale">Scale of a pen that shows ppm: 500, 640 or 700.</param>
    /// <param name="Water">Plain water poured in between.</param>
    /// <param name="Feed">Feed of full strength poured in between.</param>
    /// <param name="Stock">Of stock A poured in between, and as much of stock B.</param>
    /// <param name="Days">Days between the readings.</param>
    internal readonly record struct UptakeQuery(
        string? FirstEc,
        string? FirstVolume,
        string? SecondEc,
        string? SecondVolume,
        string? PenScale,
        string? Water,
        string? Feed,
        string? Stock,
        string? Days
    );

    public static void Map(RouteGroupBuilder api)
    {
        var given = api.MapGroup("").WithTags("A rig file in, the answer out");
        var kept = api.MapGroup("/rigs/{id:int}").WithTags("Computed from a rig of the garden");
        Both(
            given.MapPost("/mix", (HttpContext c, Plans p, Garden g) => Ask(c, p, g, null, null, Mix)),
            kept.MapGet(
                "/mix",
                (HttpContext c, Plans p, Garden g, int id, int? revision) => Ask(c, p, g, id, revision, Mix)
            ),
            "Mix",
            "What to weigh into the tank or the cans, and what comes of it"
        );
        Both(
            given.MapPost(
                "/mend-tank",
                (HttpContext c, Plans p, Garden g, [AsParameters] TankQuery q) => Mend(c, p, g, null, null, q)
            ),
            kept.MapGet(
                "/mend-tank",
                (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] TankQuery q) =>
                    Mend(c, p, g, id, revision, q)
            ),
            "MendTank",
            "Step by step, how a tank that has drifted is brought back, and what is to be let out"
        );
        Both(
            given.MapPost(
                "/uptake",
                (HttpContext c, Plans p, Garden g, [AsParameters] UptakeQuery q) => Uptake(c, p, g, null, null, q)
            ),
            kept.MapGet(
                "/uptake",
                (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] UptakeQuery q) =>
                    Uptake(c, p, g, id, revision, q)
            ),
            "Uptake",
            "What the plants took between two readings, and the top-up that holds the tank"
        );
        Both(
            given.MapPost(
                "/weeks-ahead",
                (HttpContext c, Plans p, Garden g) => Ask(c, p, g, null, null, PlanJson.WriteWeeks)
            ),
            kept.MapGet(
                "/weeks-ahead",
                (HttpContext c, Plans p, Garden g, int id, int? revision) =>
                    Ask(c, p, g, id, revision, PlanJson.WriteWeeks)
            ),
            "WeeksAhead",
            "How the tank drifts over twelve weeks, topped up in four ways, week by week"
        );
    }

    private static void Both(RouteHandlerBuilder given, RouteHandlerBuilder kept, string name, string summary)
    {
        PlanAddresses.Given(given, name).WithSummary(summary).ProducesProblem(400).Produces<object>();
        PlanAddresses.Kept(kept, name + "OfRig").WithSummary(summary).ProducesProblem(400).Produces<object>();
    }

    private static byte[] Mix(Plan plan) => PlanJson.WriteNutrients(plan);

    private static Task<IResult> Mend(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        TankQuery query
    )
    {
        var reader = new FieldReader();
        var reading = reader.Reading(query.Ec, query.PenScale, query.Ph, query.Volume, query.Temperature);
        var past = reader.Past(query.Days, query.Sodium);
        Judge(reader);
        return Ask(
            context,
            plans,
            garden,
            id,
            revision,
            plan =>
                PlanJson.WriteTank(Found(NutrientTank.Correct(plan, reading)), NutrientRenewal.Of(plan, reading, past))
        );
    }

    private static Task<IResult> Uptake(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        UptakeQuery query
    )
    {
        var reader = new FieldReader();
        var first = reader.OneOfTwo("first", query.FirstEc, query.PenScale, query.FirstVolume);
        var second = reader.OneOfTwo("second", query.SecondEc, query.PenScale, query.SecondVolume);
        var poured = reader.Poured(query.Water, query.Feed, query.Stock);
        double? days = query.Days is { } text ? reader.Number("days", text, "3.5") : null;
        Judge(reader);
        return Ask(
            context,
            plans,
            garden,
            id,
            revision,
            plan => PlanJson.WriteUptake(Found(NutrientUptake.Between(plan, first, second, poured, days)))
        );
    }

    private static async Task<IResult> Ask(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        Func<Plan, byte[]> answer
    ) =>
        Results.Text(
            Encoding.UTF8.GetString(
                await PlanAddresses.Make(
                    context,
                    plans,
                    garden,
                    id,
                    revision,
                    draws: false,
                    (plan, _) =>
                        plan.Nutrients is null
                            ? throw new Refused(422, "The rig asks for no feed: name nutrients.crop.")
                            : answer(plan)
                )
            ),
            Json,
            Encoding.UTF8
        );

    private static void Judge(FieldReader reader)
    {
        if (reader.Faults.Count > 0)
        {
            throw new Refused(
                400,
                string.Join(
                    " ",
                    reader.Faults.Select(fault => $"{fault.Field}: found {fault.Found}; expected {fault.Expected}.")
                )
            );
        }
    }

    private static T Found<T>(Answer<T> answer)
        where T : class =>
        answer.Value
        ?? throw new Refused(
            422,
            string.Join(" ", answer.Refusals.Select(refusal => $"{refusal.What} {refusal.Remedy}"))
        );
}
