using System.CommandLine;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;

namespace Dripwright.Commands;

/// <summary><c>adjust-tank</c> and <c>uptake</c>: what readings of the tank ask for.</summary>
internal static class NutrientTankCommands
{
    /// <summary>From a reading back to the nutrients wanted.</summary>
    public static Command Adjust(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var ec = Needed("--ec", "EC reading, such as \"1.6 dS/m\"; with --meter-scale also \"1100 ppm\".");
        var scale = MeterScale();
        var ph = Needed("--ph", "pH reading, such as 6.4.");
        var level = Needed("--volume", "Solution in the reservoir, such as \"80 L\" or \"20 gal\".");
        var warm = Free("--temperature", "Temperature of the solution. Left out: 20 C.");
        var days = Free("--days", "Days since the reservoir was last mixed fresh; shows how much to drain.");
        var sodium = Free("--sodium", "Sodium measured in the reservoir, such as \"120 mg/L\".");
        var json = Json();
        var command = new Command("adjust-tank", "Show steps that bring a reservoir back to its target EC and pH.")
        {
            file,
            ec,
            scale,
            ph,
            level,
            warm,
            days,
            sodium,
            json,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var reader = new FieldReader();
                var reading = reader.Reading(
                    call.GetValue(ec),
                    call.GetValue(scale),
                    call.GetValue(ph),
                    call.GetValue(level),
                    call.GetValue(warm)
                );
                var past = reader.Past(call.GetValue(days), call.GetValue(sodium));
                Judge(reader);
                var plan = await NutrientCommands
                    .Plan(call.GetRequiredValue(file), around, shared, call, stop)
                    .ConfigureAwait(false);
                var steps = Found(plan, NutrientTank.Correct(plan, reading));
                var renewals = NutrientRenewal.Of(plan, reading, past);
                NutrientCommands.Show(
                    around,
                    shared,
                    call,
                    call.GetValue(json),
                    () => PlanJson.WriteTank(steps, renewals, plan.Rig.Units),
                    () => NutrientLines.Steps(steps, renewals, plan.Rig.Units)
                );
                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>From two readings to the top-up.</summary>
    public static Command Uptake(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var firstEc = Needed("--first-ec", "EC at the first reading, such as \"2.0 dS/m\".");
        var firstVolume = Needed("--first-volume", "Solution in the reservoir then, such as \"100 L\".");
        var secondEc = Needed("--second-ec", "EC at the second reading.");
        var secondVolume = Needed("--second-volume", "Solution in the reservoir then.");
        var scale = MeterScale();
        var water = Free("--water", "Plain water added in between.");
        var solution = Free("--solution", "Full-strength solution added in between.");
        var stock = Free("--stock", "Stock A added in between, with as much of stock B, such as \"0.2 L\".");
        var days = Free("--days", "Days between the readings, such as 3.5.");
        var json = Json();
        var command = new Command(
            "uptake",
            "Show from two readings what the plants took up, and the top-up that holds the target."
        )
        {
            file,
            firstEc,
            firstVolume,
            secondEc,
            secondVolume,
            scale,
            water,
            solution,
            stock,
            days,
            json,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var reader = new FieldReader();
                var meter = call.GetValue(scale);
                var first = reader.OneOfTwo("first", call.GetValue(firstEc), meter, call.GetValue(firstVolume));
                var second = reader.OneOfTwo("second", call.GetValue(secondEc), meter, call.GetValue(secondVolume));
                var poured = reader.Poured(call.GetValue(water), call.GetValue(solution), call.GetValue(stock));
                double? between = call.GetValue(days) is { } text ? reader.Number("days", text, "3.5") : null;
                Judge(reader);
                var plan = await NutrientCommands
                    .Plan(call.GetRequiredValue(file), around, shared, call, stop)
                    .ConfigureAwait(false);
                var advice = Found(plan, NutrientUptake.Between(plan, first, second, poured, between));
                NutrientCommands.Show(
                    around,
                    shared,
                    call,
                    call.GetValue(json),
                    () => PlanJson.WriteUptake(advice, plan.Rig.Units),
                    () => NutrientLines.Uptake(advice, plan.Rig.Units)
                );
                return Exit.Good;
            }
        );
        return command;
    }

    private static Option<string> Needed(string name, string says) => new(name) { Description = says, Required = true };

    private static Option<string?> Free(string name, string says) => new(name) { Description = says };

    private static Option<string?> MeterScale() =>
        Free("--meter-scale", "Scale of a meter that shows ppm: 500, 640 or 700; it is in the meter's leaflet.");

    private static Option<bool> Json() => new("--json") { Description = "Print as JSON (handbook: nutrients)." };

    private static void Judge(FieldReader reader)
    {
        if (reader.Faults.Count > 0)
        {
            throw new Refusal(Exit.WrongCall, [.. reader.Faults.Select(Told)]);
        }
    }

    // What is wrong with an option has no unit to choose.
    private static string Told(FieldFault fault)
    {
        var words = new PlanWords(UnitSystem.Metric);
        return Line(Words.Of("ask.fault", Option(fault.Field), words.Of(fault.Found), words.Of(fault.Expected)));
    }

    private static T Found<T>(Plan plan, Answer<T> answer)
        where T : class =>
        answer.Value
        ?? throw new Refusal(
            Exit.WrongCall,
            [.. answer.Refusals.Select(refusal => Line(new PlanWords(plan.Rig.Units).Of(refusal)))]
        );

    private static string Line(string text) => $"dripwright: {text}";

    // "firstEc" is asked as "--first-ec".
    private static string Option(string field)
    {
        var dashed = new StringBuilder("--");
        foreach (var letter in field)
        {
            dashed.Append(char.IsUpper(letter) ? $"-{char.ToLowerInvariant(letter)}" : letter);
        }

        return dashed.ToString();
    }
}
