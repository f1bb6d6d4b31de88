using System.CommandLine;
using Dripwright.Store;

namespace Dripwright.Commands;

/// <summary><c>bring-back</c>: a copy in the place of the garden.</summary>
internal static class BringBackCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make("A copy that 'keep' wrote.", "copy");
        var command = new Command(
            "bring-back",
            "Put a copy in the place of the garden. The copy is checked first, and what it replaces is kept beside it."
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
                around.Out.WriteLine($"{place}: is what {path} says.");
                if (aside is not null)
                {
                    around.Out.WriteLine($"What stood there before is kept as {aside}");
                }

                return Exit.Good;
            }
        );
        return command;
    }
}
