using System.CommandLine;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>restore</c>: a backup in the place of the garden.</summary>
internal static class RestoreCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make(Words.Of("program.restore.file"), Words.Of("program.name.backup"));
        var command = new Command("restore", Words.Of("program.restore")) { file, garden.Option };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var place = garden.Place(call);
                var aside = await Garden.RestoreAsync(place, path, stop: stop).ConfigureAwait(false);
                around.Out.WriteLine(Words.Of("program.restore.done", place, path));
                if (aside is not null)
                {
                    around.Out.WriteLine(Words.Of("program.restore.aside", aside));
                }

                return Exit.Good;
            }
        );
        return command;
    }
}
