using System.CommandLine;

namespace Dripwright.Commands;

/// <summary><c>backup</c>: a copy of the garden, also while it is in use.</summary>
internal static class BackupCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make("The backup to write.", "backup");
        var replace = new Option<bool>("--replace") { Description = "Replace a file that is there." };
        var command = new Command(
            "backup",
            "Back up the whole garden into one file, also while it is open in the workbench."
        )
        {
            file,
            replace,
            garden.Option,
        };
        command.SetAction(
            (call, stop) =>
                garden.In(
                    call,
                    async open =>
                    {
                        var path = call.GetRequiredValue(file);
                        await open.BackupAsync(path, call.GetValue(replace), stop).ConfigureAwait(false);
                        around.Out.WriteLine(
                            $"{path}: a backup of {open.Place}. To restore it: dripwright restore {path}"
                        );
                    },
                    stop
                )
        );
        return command;
    }
}
