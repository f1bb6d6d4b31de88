using System.CommandLine;
using System.Text;
using Dripwright.Files;
using Dripwright.Store;

namespace Dripwright.Commands;

/// <summary><c>export</c>: the garden, or one rig of it, as an open file.</summary>
internal static class ExportCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var file = RigArgument.Make("The file to write; \"-\" prints it.", "file");
        var rig = new Option<string?>("--rig")
        {
            Description = "Only the rig of this name, as its rig file.",
            HelpName = "name",
        };
        var replace = new Option<bool>("--replace") { Description = "Replace a file that is there." };
        var command = new Command(
            "export",
            "Export the whole garden as one JSON file that other programs can read, or one rig as its rig file."
        )
        {
            file,
            rig,
            replace,
            garden.Option,
        };
        command.SetAction(
            (call, stop) =>
                garden.In(
                    call,
                    async open =>
                    {
                        var bytes = call.GetValue(rig) is { } name
                            ? Encoding.UTF8.GetBytes(await RigText(open, name, stop).ConfigureAwait(false))
                            : await Whole(open, stop).ConfigureAwait(false);
                        var path = call.GetRequiredValue(file);
                        if (path == "-")
                        {
                            around.Out.Write(Encoding.UTF8.GetString(bytes));
                            return;
                        }

                        Writing.File(path, bytes, call.GetValue(replace));
                        around.Out.WriteLine($"{path}: exported.");
                    },
                    stop
                )
        );
        return command;
    }

    private static async Task<byte[]> Whole(Garden garden, CancellationToken stop)
    {
        using var bytes = new MemoryStream();
        await garden.ExportAsync(bytes, stop).ConfigureAwait(false);
        return bytes.ToArray();
    }

    private static async Task<string> RigText(Garden garden, string name, CancellationToken stop)
    {
        var rigs = await garden.RigsAsync(stop).ConfigureAwait(false);
        var named = rigs.Where(rig => rig.Name == name).ToList();
        if (named.Count == 1 && await garden.DraftAsync(named[0].Id, stop).ConfigureAwait(false) is { } draft)
        {
            return draft.Text;
        }

        throw new Refusal(
            Exit.WrongCall,
            named.Count > 1
                ? $"dripwright: more than one rig is called \"{name}\". Rename one of them first."
                : $"dripwright: no rig is called \"{name}\". {(rigs.Count == 0 ? "The garden has no rigs." : "The rigs are: " + string.Join(", ", rigs.Select(rig => $"\"{rig.Name}\"")))}"
        );
    }
}
