using System.CommandLine;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Curing;
using Dripwright.Engine.Findings;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;
using Dripwright.Terminal;
using Dripwright.Workbench.Editing;

namespace Dripwright.Commands;

/// <summary><c>cures</c>: what cures each finding of a rig; tries one, or takes one into the file.</summary>
internal static class CuresCommand
{
    private static readonly PlanOptions s_options = new() { Draws = 0 };

    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var name = Words.Of("program.name.cure");
        var tried = new Option<string?>("--try") { Description = Words.Of("program.cures.try"), HelpName = name };
        var taken = new Option<string?>("--take") { Description = Words.Of("program.cures.take"), HelpName = name };
        var command = new Command("cures", Words.Of("program.cures")) { file, tried, taken };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var sound = Planning.Read(path, shared.ReadCatalogue(call, around, stop), around, stop);
                var options = new CureOptions { Stop = stop };
                var plan = await Planning.Plan(sound, s_options, around, stop).ConfigureAwait(false);
                if ((call.GetValue(taken) ?? call.GetValue(tried)) is not { } number)
                {
                    var proven = await LongWork
                        .Run(progress => ProvenCures.Of(plan, options, progress), around, stop)
                        .ConfigureAwait(false);
                    Draw(console => CuresView.Draw(console, CureWords.Of(proven)));
                    return Exit.Good;
                }

                var found = await LongWork
                    .Run(
                        progress =>
                            CureWords.Find(plan, number, finding => ProvenCures.Of(plan, finding, options, progress)),
                        around,
                        stop
                    )
                    .ConfigureAwait(false);
                var (finding, cure) =
                    found ?? throw new Refusal(Exit.WrongCall, Words.Of("program.cures.none", number, path));
                var trial = CureTrial.Of(plan, finding, cure, s_options with { Stop = stop });
                Draw(console => CuresView.Draw(console, CureWords.Of(plan, trial.After!, cure)));
                if (call.GetValue(taken) is not null)
                {
                    Take(path, sound.Bytes, cure, around);
                }

                return Exit.Good;

                void Draw(Action<Spectre.Console.IAnsiConsole> draw) =>
                    Consoles.Draw(around, shared.ShowsColour(call, around), draw);
            }
        );
        return command;
    }

    /// <summary>Writes a cure into the file it was read from; all else in the file stays as typed.</summary>
    public static void Take(string path, byte[] read, Cure cure, Surroundings around)
    {
        if (path == "-")
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.cures.input"));
        }

        var text = CureText.Applied(new UTF8Encoding(false).GetString(read).TrimStart('\uFEFF'), cure);
        Writing.File(path, Encoding.UTF8.GetBytes(text), replace: true);
        around.Out.WriteLine(Plain.Line(Words.Of("program.cures.taken", path)));
    }
}
