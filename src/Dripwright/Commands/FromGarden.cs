using System.CommandLine;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>A command that writes something of the garden into a file.</summary>
internal static class FromGarden
{
    /// <param name="around">Where it reads and writes.</param>
    /// <param name="name">The command's name; the texts of its help have it in their keys.</param>
    /// <param name="file">The file to write.</param>
    /// <param name="option">One more option, or null.</param>
    /// <param name="write">Writes the file, whose path it gets, and whether one that is there gives way; gives a line for the person, or null.</param>
    public static Command Of(
        Surroundings around,
        string name,
        Argument<string> file,
        Option? option,
        Func<Garden, ParseResult, (string Path, bool Replace), CancellationToken, Task<string?>> write
    )
    {
        var garden = new GardenOption(around);
        var replace = new Option<bool>("--replace") { Description = Words.Of("program.replace") };
        var command = new Command(name, Words.Of($"program.{name}")) { file };
        if (option is not null)
        {
            command.Add(option);
        }

        command.Add(replace);
        command.Add(garden.Option);
        command.SetAction(
            (call, stop) =>
                garden.In(
                    call,
                    async open =>
                    {
                        var place = (call.GetRequiredValue(file), call.GetValue(replace));
                        if (await write(open, call, place, stop).ConfigureAwait(false) is { } line)
                        {
                            around.Out.WriteLine(line);
                        }
                    },
                    stop
                )
        );
        return command;
    }
}
