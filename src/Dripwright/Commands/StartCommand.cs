using System.CommandLine;
using System.Text;
using Dripwright.Engine.Rigs;
using Dripwright.Files;

namespace Dripwright.Commands;

/// <summary><c>start</c>: a first rig file from a few answers.</summary>
internal static class StartCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make("The rig file to make, such as my.rig.json; \"-\" prints it.");
        var replace = new Option<bool>("--replace") { Description = "Replace a file that is there." };
        var noQuestions = new Option<bool>("--no-questions") { Description = "Ask nothing, even on a terminal." };
        var answers = new StarterOptions();
        var command = new Command("start", "Make a first rig file from a few answers.") { file, replace, noQuestions };
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
                around.Out.WriteLine($"{path}: made. Edit it as you like, then: dripwright check {path}");
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
        catch (ArgumentOutOfRangeException wrong) when (wrong.ParamName == "answers")
        {
            throw new Refusal(Exit.WrongCall, $"dripwright: this rig cannot be made: {wrong.Message}");
        }
    }
}
