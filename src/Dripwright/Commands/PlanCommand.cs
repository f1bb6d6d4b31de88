using System.CommandLine;
using System.Text;
using Dripwright.Engine;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>plan</c>: everything computed from a rig, for people or for programs.</summary>
internal static class PlanCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var json = new Option<bool>("--json") { Description = Words.Of("program.plan.json") };
        var noSimulation = SimulationOption();
        var units = SharedOptions.Units();
        var command = new Command("plan", Words.Of("program.plan")) { file, json, noSimulation, units };
        command.SetAction(
            async (call, stop) =>
            {
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var shown = SharedOptions.UnitsOf(call.GetValue(units));
                var sound = Planning.Read(call.GetRequiredValue(file), catalogue, around, stop, shown);
                var options = Options(call.GetValue(noSimulation));
                var plan = await Planning.Plan(sound, options, around, stop).ConfigureAwait(false);
                if (call.GetValue(json))
                {
                    around.Out.Write(Encoding.UTF8.GetString(PlanJson.Write(plan)));
                }
                else
                {
                    var summary = PlanSummary.Of(plan);
                    Consoles.Draw(
                        around,
                        shared.ShowsColour(call, around),
                        console => SummaryView.Draw(console, summary)
                    );
                }

                return Exit.Good;
            }
        );
        return command;
    }

    /// <summary>The option that leaves the simulated builds out.</summary>
    public static Option<bool> SimulationOption() =>
        new("--no-simulation") { Description = Words.Of("program.no-simulation") };

    /// <summary>Options of a plan with or without the simulated builds.</summary>
    public static PlanOptions Options(bool noSimulation) =>
        noSimulation ? new PlanOptions { Draws = 0, Cures = true } : new PlanOptions { Cures = true };
}
