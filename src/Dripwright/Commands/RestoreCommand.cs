using System.CommandLine;
using Dripwright.Store;

namespace Dripwright.Commands;

/// <summary><c>restore</c>: a backup in the place of the garden.</summary>
internal static class RestoreCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make("A backup that 'dripwright backup' wrote.", "backup");
        var command = new Command(
            "restore",
            "Restore the garden from a backup. The backup is checked first, and the garden it replaces is kept beside it."
        )
        {
            file,
            garden.Option,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var place = garden.Place(call);
                var aside = await Garden.RestoreAsync(place, path, stop: stop).ConfigureAwait(false);
                around.Out.WriteLine($"{place}: restored from {path}.");
                if (aside is not null)
                {
                    around.Out.WriteLine($"The garden that was there before is kept as {aside}");
                }

                return Exit.Good;
            }
        );
        return command;
    }
}
