using System.CommandLine;
using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>check</c>: all faults of a rig file, then whether the rig would work.</summary>
internal static class CheckCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var units = SharedOptions.Units();
        var command = new Command("check", Words.Of("program.check")) { file, units };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var shown = SharedOptions.UnitsOf(call.GetValue(units));
                var sound = Planning.Read(path, catalogue, around, stop, shown);
                // Simulated builds tell how likely a weak pot is; a yes or no does not wait for them.
                var options = new PlanOptions { Draws = 0, Cures = true };
                var plan = await Planning.Plan(sound, options, around, stop).ConfigureAwait(false);
                Consoles.Draw(
                    around,
                    shared.ShowsColour(call, around),
                    console =>
                    {
                        console.Write(
                            new Spectre.Console.Text(Plain.Line(Words.Of("program.check.good", path)) + "\n")
                        );
                        SummaryView.DrawFindings(console, new PlanWords(plan.Rig.Units).Of(plan.Findings));
                    }
                );
                return plan.Findings.Any(finding => finding.Level == FindingLevel.Stop) ? Exit.RigWouldFail : Exit.Good;
            }
        );
        return command;
    }
}
