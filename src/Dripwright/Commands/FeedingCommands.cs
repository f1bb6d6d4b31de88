using System.CommandLine;
using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Nutrition.Planning;
using Dripwright.Engine.Nutrition.Strength;
using Dripwright.Engine.Nutrition.Tank;
using Dripwright.Engine.Report;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Screen;

namespace Dripwright.Commands;

/// <summary><c>mix</c>, <c>mend-tank</c> and <c>weeks-ahead</c>: the feed solution of a rig.</summary>
internal static class FeedingCommands
{
    /// <summary>What to weigh.</summary>
    public static Command Mix(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var json = new Option<bool>("--json")
        {
            Description = "The feed as JSON (see the handbook: plan-json, nutrition).",
        };
        var command = new Command("mix", "Say what to weigh into the tank or the cans, and what comes of it.")
        {
            file,
            json,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var plan = await Plan(path, around, shared, call, stop).ConfigureAwait(false);
                if (call.GetValue(json))
                {
                    around.Out.Write(Encoding.UTF8.GetString(PlanJson.WriteNutrition(plan)));
                }
                else
                {
                    Write(around, shared, call, FeedingWords.Recipe(plan));
                }

                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>From a reading back to the feed wanted.</summary>
    public static Command MendTank(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var ec = new Option<string>("--ec")
        {
            Description = "Strength read, such as \"1.6 dS/m\"; with --pen-scale also \"1100 ppm\".",
            Required = true,
        };
        var scale = new Option<int?>("--pen-scale") { Description = "Scale of a pen that shows ppm: 500, 640 or 700." };
        var ph = new Option<string>("--ph") { Description = "pH read, such as 6.4.", Required = true };
        var level = new Option<string>("--volume")
        {
            Description = "Water in the tank, such as \"80 L\" or \"20 gal\".",
            Required = true,
        };
        var warm = new Option<string>("--temperature")
        {
            Description = "Temperature of the water.",
            DefaultValueFactory = _ => "20 C",
        };
        var command = new Command("mend-tank", "Say step by step how a tank that has drifted is brought back.")
        {
            file,
            ec,
            scale,
            ph,
            level,
            warm,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var reading = new TankReading(
                    Strength(call.GetRequiredValue(ec), call.GetValue(scale)),
                    Acidity(call.GetRequiredValue(ph)),
                    Quantity(Dimension.Volume, "--volume", call.GetRequiredValue(level)),
                    Quantity(Dimension.Temperature, "--temperature", call.GetRequiredValue(warm)) - 273.15
                );
                var plan = await Plan(call.GetRequiredValue(file), around, shared, call, stop).ConfigureAwait(false);
                var steps = NutritionTank.Correct(plan, reading);
                if (!steps.Found)
                {
                    throw new Refusal(
                        Exit.WrongCall,
                        [.. steps.Refusals.Select(refusal => $"dripwright: {refusal.What} {refusal.Remedy}")]
                    );
                }

                Write(around, shared, call, FeedingWords.Steps(steps.Value));
                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>The loop over weeks.</summary>
    public static Command WeeksAhead(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var command = new Command("weeks-ahead", "Say how the tank drifts over twelve weeks, topped up in four ways.")
        {
            file,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var plan = await Plan(call.GetRequiredValue(file), around, shared, call, stop).ConfigureAwait(false);
                Write(around, shared, call, FeedingWords.Weeks(plan));
                return Exit.Good;
            }
        );
        return command;
    }

    private static async Task<Plan> Plan(
        string path,
        Surroundings around,
        SharedOptions shared,
        ParseResult call,
        CancellationToken stop
    )
    {
        var catalogue = shared.ReadCatalogue(call, around, stop);
        var sound = Planning.Read(path, catalogue, around, stop);
        var options = new PlanOptions { Draws = 0 };
        var plan = await Planning.Plan(sound, catalogue, options, around, stop).ConfigureAwait(false);
        return plan.Nutrition is not null
            ? plan
            : throw new Refusal(
                Exit.FaultyFile,
                $"{path}: asks for no feed. Name \"crop\" in its \"nutrition\" section: tomato, cucumber or sweet-pepper."
            );
    }

    private static double Strength(string text, int? scale)
    {
        if (scale is { } number && text.Trim().EndsWith("ppm", StringComparison.OrdinalIgnoreCase))
        {
            var figure = text.Trim()[..^3].Trim();
            if (
                Enum.IsDefined((PpmScale)number)
                && double.TryParse(figure, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var ppm)
            )
            {
                return PpmReading.ToEc(ppm, (PpmScale)number).DecisiemensPerMetre;
            }

            throw new Refusal(
                Exit.WrongCall,
                "dripwright: --pen-scale is 500, 640 or 700, and --ec such as \"1100 ppm\"."
            );
        }

        return Quantity(Dimension.Conductivity, "--ec", text) * 10;
    }

    // Read by hand: a typed option would take the point for a thousands sign where people write a decimal comma.
    private static double Acidity(string text) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var ph)
            ? ph
            : throw new Refusal(Exit.WrongCall, $"dripwright: --ph: found \"{text}\"; expected a number such as 6.4.");

    private static double Quantity(Dimension dimension, string option, string text) =>
        QuantityText.TryParse(dimension, text, out var si, out var expected)
            ? si
            : throw new Refusal(Exit.WrongCall, $"dripwright: {option}: found \"{text}\"; expected {expected}.");

    private static void Write(Surroundings around, SharedOptions shared, ParseResult call, IEnumerable<string> lines) =>
        Consoles.Draw(
            around,
            shared.ShowsColour(call, around),
            console =>
            {
                foreach (var line in lines)
                {
                    console.Write(new Spectre.Console.Text(Plain.Line(line) + "\n"));
                }
            }
        );
}
