using System.CommandLine;
using System.Text;
using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>mix</c> and <c>weeks-ahead</c>: the nutrient solution of a rig.</summary>
internal static class NutrientCommands
{
    /// <summary>What to weigh.</summary>
    public static Command Mix(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var units = SharedOptions.Units();
        var json = new Option<bool>("--json") { Description = Words.Of("program.json.recipe") };
        var command = new Command("mix", Words.Of("program.mix")) { file, json, units };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var plan = await Plan(path, around, shared, (call, call.GetValue(units)), stop).ConfigureAwait(false);
                Show(
                    around,
                    shared,
                    call,
                    call.GetValue(json),
                    () => PlanJson.WriteNutrients(plan),
                    () => NutrientLines.Recipe(plan)
                );
                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>The loop over weeks.</summary>
    public static Command WeeksAhead(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var units = SharedOptions.Units();
        var json = new Option<bool>("--json") { Description = Words.Of("program.json.nutrients") };
        var command = new Command("weeks-ahead", Words.Of("program.weeks-ahead")) { file, json, units };
        command.SetAction(
            async (call, stop) =>
            {
                var plan = await Plan(call.GetRequiredValue(file), around, shared, (call, call.GetValue(units)), stop)
                    .ConfigureAwait(false);
                Show(
                    around,
                    shared,
                    call,
                    call.GetValue(json),
                    () => PlanJson.WriteWeeks(plan),
                    () => NutrientLines.Weeks(plan)
                );
                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>The plan of a rig file that asks for a nutrient recipe.</summary>
    internal static async Task<Plan> Plan(
        string path,
        Surroundings around,
        SharedOptions shared,
        (ParseResult Call, string? Units) asked,
        CancellationToken stop
    )
    {
        var catalogue = shared.ReadCatalogue(asked.Call, around, stop);
        var sound = Planning.Read(path, catalogue, around, stop, SharedOptions.UnitsOf(asked.Units));
        var options = new PlanOptions { Draws = 0 };
        var plan = await Planning.Plan(sound, options, around, stop).ConfigureAwait(false);
        return plan.Nutrients is not null
            ? plan
            : throw new Refusal(
                Exit.FaultyFile,
                Words.Of(
                    "screen.mix.no-nutrients",
                    path,
                    string.Join(", ", catalogue.Targets.Stages.Select(stage => stage.Crop).Distinct())
                )
            );
    }

    /// <summary>Shows an answer, as JSON where asked.</summary>
    internal static void Show(
        Surroundings around,
        SharedOptions shared,
        ParseResult call,
        bool asJson,
        Func<byte[]> json,
        Func<IEnumerable<string>> lines
    )
    {
        if (asJson)
        {
            around.Out.Write(Encoding.UTF8.GetString(json()));
            return;
        }

        Consoles.Draw(
            around,
            shared.ShowsColour(call, around),
            console =>
            {
                foreach (var line in lines())
                {
                    console.Write(new Spectre.Console.Text(Plain.Line(line) + "\n"));
                }
            }
        );
    }
}
