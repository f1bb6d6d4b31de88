using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The nutrient solution of a rig: what to weigh, what a reading asks for, and the weeks ahead.</summary>
internal static class NutrientAddresses
{
    private const string Json = "application/json";

    /// <summary>A reading of the tank.</summary>
    /// <param name="Ec">EC read, such as 1.6 dS/m; with meterScale also 1100 ppm.</param>
    /// <param name="MeterScale">Scale of a meter that shows ppm: 500, 640 or 700.</param>
    /// <param name="Ph">pH read, such as 6.4.</param>
    /// <param name="Volume">Water in the tank, such as 80 L or 20 gal.</param>
    /// <param name="Temperature">Temperature of the water; 20 C where it is left out.</param>
    /// <param name="Days">Days since the tank was last mixed fresh, for what is to be drained.</param>
    /// <param name="Sodium">Sodium measured in the tank, such as 120 mg/L.</param>
    internal readonly record struct TankQuery(
        string? Ec,
        string? MeterScale,
        string? Ph,
        string? Volume,
        string? Temperature,
        string? Days,
        string? Sodium
    );

    /// <summary>Two readings of the tank and what was poured in between.</summary>
    /// <param name="FirstEc">EC at the first reading.</param>
    /// <param name="FirstVolume">Water in the tank then.</param>
    /// <param name="SecondEc">EC at the second reading.</param>
    /// <param name="SecondVolume">Water in the tank then.</param>
    /// <param name="MeterScale">Scale of a meter that shows ppm: 500, 640 or 700.</param>
    /// <param name="Water">Plain water poured in between.</param>
    /// <param name="Solution">Nutrient solution of full strength poured in between.</param>
    /// <param name="Stock">Of stock A poured in between, and as much of stock B.</param>
    /// <param name="Days">Days between the readings.</param>
    internal readonly record struct UptakeQuery(
        string? FirstEc,
        string? FirstVolume,
        string? SecondEc,
        string? SecondVolume,
        string? MeterScale,
        string? Water,
        string? Solution,
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
            "What to weigh into the tank or the stock tanks, and what comes of it"
        );
        Both(
            given.MapPost(
                "/adjust-tank",
                (HttpContext c, Plans p, Garden g, [AsParameters] TankQuery q) => Adjust(c, p, g, null, null, q)
            ),
            kept.MapGet(
                "/adjust-tank",
                (HttpContext c, Plans p, Garden g, int id, int? revision, [AsParameters] TankQuery q) =>
                    Adjust(c, p, g, id, revision, q)
            ),
            "AdjustTank",
            "Step by step, how a tank that has drifted is brought back, and what is to be drained"
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

    private static Task<IResult> Adjust(
        HttpContext context,
        Plans plans,
        Garden garden,
        int? id,
        int? revision,
        TankQuery query
    )
    {
        var reader = new FieldReader();
        var reading = reader.Reading(query.Ec, query.MeterScale, query.Ph, query.Volume, query.Temperature);
        var past = reader.Past(query.Days, query.Sodium);
        Judge(reader);
        return Ask(
            context,
            plans,
            garden,
            id,
            revision,
            plan =>
                PlanJson.WriteTank(
                    Found(plan, NutrientTank.Correct(plan, reading)),
                    NutrientRenewal.Of(plan, reading, past),
                    plan.Rig.Units
                )
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
        var first = reader.OneOfTwo("first", query.FirstEc, query.MeterScale, query.FirstVolume);
        var second = reader.OneOfTwo("second", query.SecondEc, query.MeterScale, query.SecondVolume);
        var poured = reader.Poured(query.Water, query.Solution, query.Stock);
        double? days = query.Days is { } text ? reader.Number("days", text, "3.5") : null;
        Judge(reader);
        return Ask(
            context,
            plans,
            garden,
            id,
            revision,
            plan =>
                PlanJson.WriteUptake(
                    Found(plan, NutrientUptake.Between(plan, first, second, poured, days)),
                    plan.Rig.Units
                )
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
                        plan.Nutrients is null ? throw new Refused(422, Words.Of("screen.mix.no-crop")) : answer(plan)
                )
            ),
            Json,
            Encoding.UTF8
        );

    private static void Judge(FieldReader reader)
    {
        if (reader.Faults.Count > 0)
        {
            throw new Refused(400, string.Join(' ', reader.Faults.Select(Told)));
        }
    }

    // What is wrong with a field has no unit to choose.
    private static string Told(FieldFault fault)
    {
        var words = new PlanWords(UnitSystem.Metric);
        return Words.Of("ask.fault", fault.Field, words.Of(fault.Found), words.Of(fault.Expected));
    }

    private static T Found<T>(Plan plan, Answer<T> answer)
        where T : class =>
        answer.Value
        ?? throw new Refused(422, string.Join(' ', answer.Refusals.Select(new PlanWords(plan.Rig.Units).Of)));
}
