using System.CommandLine;

namespace Dripwright.Commands;

/// <summary><c>keep</c>: a copy of the garden, also while it is in use.</summary>
internal static class KeepCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make("The copy to write.", "copy");
        var replace = new Option<bool>("--replace") { Description = "Replace a file that stands there." };
        var command = new Command("keep", "Write a copy of the whole garden, also while pages have it open.")
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
                            $"{path}: a copy of {open.Place}. It comes back with: dripwright bring-back {path}"
                        );
                    },
                    stop
                )
        );
        return command;
    }
}
