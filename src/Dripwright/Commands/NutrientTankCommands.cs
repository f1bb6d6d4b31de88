using System.CommandLine;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Solutions;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>adjust-tank</c> and <c>uptake</c>: what readings of the tank ask for.</summary>
internal static class NutrientTankCommands
{
    /// <summary>From a reading back to the nutrients wanted.</summary>
    public static Command Adjust(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var units = SharedOptions.Units();
        var ec = Needed("--ec", Words.Of("program.adjust.ec"));
        var scale = MeterScale();
        var ph = Needed("--ph", Words.Of("program.adjust.ph"));
        var level = Needed("--volume", Words.Of("program.adjust.volume"));
        var warm = Free("--temperature", Words.Of("program.adjust.temperature"));
        var days = Free("--days", Words.Of("program.adjust.days"));
        var sodium = Free("--sodium", Words.Of("program.adjust.sodium"));
        var json = Json();
        var command = new Command("adjust-tank", Words.Of("program.adjust-tank"))
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
            units,
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
                    .Plan(call.GetRequiredValue(file), around, shared, (call, call.GetValue(units)), stop)
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
        var units = SharedOptions.Units();
        var firstEc = Needed("--first-ec", Words.Of("program.uptake.first-ec"));
        var firstVolume = Needed("--first-volume", Words.Of("program.uptake.first-volume"));
        var secondEc = Needed("--second-ec", Words.Of("program.uptake.second-ec"));
        var secondVolume = Needed("--second-volume", Words.Of("program.uptake.second-volume"));
        var scale = MeterScale();
        var water = Free("--water", Words.Of("program.uptake.water"));
        var solution = Free("--solution", Words.Of("program.uptake.solution"));
        var stock = Free("--stock", Words.Of("program.uptake.stock"));
        var days = Free("--days", Words.Of("program.uptake.days"));
        var json = Json();
        var command = new Command("uptake", Words.Of("program.uptake"))
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
            units,
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
                    .Plan(call.GetRequiredValue(file), around, shared, (call, call.GetValue(units)), stop)
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

    private static Option<string?> MeterScale() => Free("--meter-scale", Words.Of("program.meter-scale"));

    private static Option<bool> Json() => new("--json") { Description = Words.Of("program.json.nutrients") };

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
