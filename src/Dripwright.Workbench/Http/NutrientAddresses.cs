using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Workbench.Failing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>The nutrient solution of a rig: what to weigh, what a reading asks for, and the weeks ahead.</summary>
internal static class NutrientAddresses
{
    /// <summary>A reading of the tank.</summary>
    /// <param name="Ec">EC read, such as 1.6 dS/m; with meterScale also 1100 ppm.</param>
    /// <param name="MeterScale">Scale of a meter that shows ppm: 500, 640 or 700.</param>
    /// <param name="Ph">pH read, such as 6.4.</param>
    /// <param name="Volume">Water in the tank, such as 80 L or 20 gal.</param>
    /// <param name="Temperature">Temperature of the water; 20 C where it is left out.</param>
    /// <param name="Days">Days since the tank was last mixed fresh, for what is to be drained.</param>
    /// <param name="Sodium">Sodium measured in the tank, such as 120 mg/L.</param>
    internal readonly record struct TankQuery(
        [FromQuery(Name = "ec")] string? Ec,
        [FromQuery(Name = "meterScale")] string? MeterScale,
        [FromQuery(Name = "ph")] string? Ph,
        [FromQuery(Name = "volume")] string? Volume,
        [FromQuery(Name = "temperature")] string? Temperature,
        [FromQuery(Name = "days")] string? Days,
        [FromQuery(Name = "sodium")] string? Sodium
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
        [FromQuery(Name = "firstEc")] string? FirstEc,
        [FromQuery(Name = "firstVolume")] string? FirstVolume,
        [FromQuery(Name = "secondEc")] string? SecondEc,
        [FromQuery(Name = "secondVolume")] string? SecondVolume,
        [FromQuery(Name = "meterScale")] string? MeterScale,
        [FromQuery(Name = "water")] string? Water,
        [FromQuery(Name = "solution")] string? Solution,
        [FromQuery(Name = "stock")] string? Stock,
        [FromQuery(Name = "days")] string? Days
    );

    public static void Map(RouteGroupBuilder api)
    {
        var rig = new RigRoutes(api);
        rig.Add(
            "/mix",
            "Mix",
            "What to weigh into the tank or the stock tanks, and what comes of it",
            asked => Ask(asked, PlanJson.WriteNutrients),
            Told
        );
        rig.Add<TankQuery>(
            "/adjust-tank",
            "AdjustTank",
            "Step by step, how a tank that has drifted is brought back, and what is to be drained",
            Adjust,
            Told
        );
        rig.Add<UptakeQuery>(
            "/uptake",
            "Uptake",
            "What the plants took between two readings, and the top-up that holds the tank",
            Uptake,
            Told
        );
        rig.Add(
            "/weeks-ahead",
            "WeeksAhead",
            "How the tank drifts over twelve weeks, topped up in four ways, week by week",
            asked => Ask(asked, PlanJson.WriteWeeks),
            Told
        );
    }

    private static void Told(RouteHandlerBuilder route) => route.ProducesProblem(400).Produces<object>();

    private static Task<IResult> Adjust(RigQuestion asked, TankQuery query)
    {
        var reader = new FieldReader();
        var reading = reader.Reading(query.Ec, query.MeterScale, query.Ph, query.Volume, query.Temperature);
        var past = reader.Past(query.Days, query.Sodium);
        Judge(reader);
        return Ask(
            asked,
            plan =>
                PlanJson.WriteTank(
                    Found(plan, NutrientTank.Correct(plan, reading)),
                    NutrientRenewal.Of(plan, reading, past),
                    plan.Rig.Units
                )
        );
    }

    private static Task<IResult> Uptake(RigQuestion asked, UptakeQuery query)
    {
        var reader = new FieldReader();
        var first = reader.OneOfTwo("first", query.FirstEc, query.MeterScale, query.FirstVolume);
        var second = reader.OneOfTwo("second", query.SecondEc, query.MeterScale, query.SecondVolume);
        var poured = reader.Poured(query.Water, query.Solution, query.Stock);
        double? days = query.Days is { } text ? reader.Number("days", text, "3.5") : null;
        Judge(reader);
        return Ask(
            asked,
            plan =>
                PlanJson.WriteUptake(
                    Found(plan, NutrientUptake.Between(plan, first, second, poured, days)),
                    plan.Rig.Units
                )
        );
    }

    private static async Task<IResult> Ask(RigQuestion asked, Func<Plan, byte[]> answer) =>
        Results.Text(
            Encoding.UTF8.GetString(
                await asked.Of(
                    draws: false,
                    (plan, _) =>
                        plan.Nutrients is null ? throw new Refused(422, Words.Of("screen.mix.no-crop")) : answer(plan)
                )
            ),
            "application/json",
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
