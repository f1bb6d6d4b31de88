using System.CommandLine;
using Dripwright.Engine;
using Dripwright.Engine.Curing;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>make-it-work</c>: changes after which a rig has no stop and nothing to mend.</summary>
internal static class MakeItWorkCommand
{
    private static readonly PlanOptions s_options = new() { Draws = 0 };

    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var kept = new Option<string[]>("--keep")
        {
            Description = Words.Of("program.repair.keep"),
            HelpName = Words.Of("program.name.field"),
        };
        var taken = new Option<string?>("--take")
        {
            Description = Words.Of("program.repair.take"),
            HelpName = "fewest|cheapest",
        };
        taken.AcceptOnlyFromAmong("fewest", "cheapest");
        var command = new Command("make-it-work", Words.Of("program.repair")) { file, kept, taken };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var sound = Planning.Read(path, shared.ReadCatalogue(call, around, stop), around, stop);
                var plan = await Planning.Plan(sound, s_options, around, stop).ConfigureAwait(false);
                var options = new RepairOptions
                {
                    Kept = [.. RepairOptions.UsuallyKept, .. call.GetValue(kept) ?? []],
                    Stop = stop,
                };
                var repair = await LongWork
                    .Run(progress => MakeItWork.Of(plan, options, progress), around, stop)
                    .ConfigureAwait(false);
                Consoles.Draw(
                    around,
                    shared.ShowsColour(call, around),
                    console => CuresView.Draw(console, plan, repair)
                );
                if (repair.Fewest is not { } fewest)
                {
                    return Exit.RigWouldFail;
                }

                if (call.GetValue(taken) is { } which)
                {
                    CuresCommand.Take(path, sound.Bytes, (which == "fewest" ? fewest : repair.Cheapest!).Cure, around);
                }

                return Exit.Good;
            }
        );
        return command;
    }
}
