using System.CommandLine;
using Dripwright.Store;

namespace Dripwright.Commands;

/// <summary><c>unlock</c>: frees a garden whose update was broken off.</summary>
internal static class UnlockCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var command = new Command(
            "unlock",
            "Free a garden that was left locked when an update of its tables was broken off. Close every other Dripwright first."
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
