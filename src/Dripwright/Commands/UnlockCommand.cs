using System.CommandLine;
using Dripwright.Store;

namespace Dripwright.Commands;

/// <summary><c>unlock</c>: cures a garden whose change of tables was broken off.</summary>
internal static class UnlockCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var command = new Command(
            "unlock",
            "Take away the mark that a broken-off change of the garden's tables left. Only when no other Dripwright is at work on it."
        )
        {
            garden.Option,
        };
        command.SetAction(
            (call, _) =>
            {
                var place = garden.Place(call);
                around.Out.WriteLine(
                    Garden.Unlock(place) ? $"{place}: can be opened again." : $"{place}: is not locked."
                );
                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }
}
