using System.CommandLine;
using System.Text;
using Dripwright.Engine.Rigs;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>start</c>: a first rig file from a few answers.</summary>
internal static class StartCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make(Words.Of("program.start.file"));
        var replace = new Option<bool>("--replace") { Description = Words.Of("program.replace") };
        var noQuestions = new Option<bool>("--no-questions") { Description = Words.Of("program.start.no-questions") };
        var answers = new StarterOptions();
        var command = new Command("start", Words.Of("program.start")) { file, replace, noQuestions };
        answers.AddTo(command);
        command.SetAction(
            (call, stop) =>
            {
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var asks = around.InIsTerminal && around.ErrorIsTerminal && !call.GetValue(noQuestions);
                var given = answers.Read(call, asks ? new Questions(around, stop) : null);
                var text = Text(given, catalogue);
                var path = call.GetRequiredValue(file);
                if (path == "-")
                {
                    around.Out.Write(text);
                    return Task.FromResult(Exit.Good);
                }

                Writing.File(path, Encoding.UTF8.GetBytes(text), call.GetValue(replace));
                around.Out.WriteLine(Words.Of("program.start.made", path));
                var told = new PlanWords(given.Units);
                foreach (var chosen in RigStarter.Chosen(given, catalogue))
                {
                    around.Out.WriteLine(told.Of(chosen));
                }

                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }

    private static string Text(StarterAnswers answers, Engine.Catalogue.PartsCatalogue catalogue)
    {
        try
        {
            return RigStarter.Text(answers, catalogue);
        }
        catch (StarterException wrong)
        {
            throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.start.cannot", wrong.Fault.Told())));
        }
    }
}
