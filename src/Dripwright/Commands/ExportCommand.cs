using System.CommandLine;
using System.Text;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Store;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>export</c>: the garden, or one rig of it, as an open file.</summary>
internal static class ExportCommand
{
    public static Command Of(Surroundings around)
    {
        var rig = new Option<string?>("--rig")
        {
            Description = Words.Of("program.export.rig"),
            HelpName = Words.Of("program.name.name"),
        };
        return FromGarden.Of(
            around,
            "export",
            RigArgument.Make(Words.Of("program.export.file"), Words.Of("program.name.file")),
            rig,
            async (garden, call, to, stop) =>
            {
                var bytes = call.GetValue(rig) is { } name
                    ? Encoding.UTF8.GetBytes(await RigText(garden, name, stop).ConfigureAwait(false))
                    : await Whole(garden, stop).ConfigureAwait(false);
                if (to.Path == "-")
                {
                    around.Out.Write(Encoding.UTF8.GetString(bytes));
                    return null;
                }

                Writing.File(to.Path, bytes, to.Replace);
                return Words.Of("program.export.done", to.Path);
            }
        );
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
            Wrong.Told(
                named.Count > 1 ? Words.Of("program.export.several", name)
                : rigs.Count == 0 ? Words.Of("program.export.empty", name)
                : Words.Of("program.export.none", name, string.Join(", ", rigs.Select(rig => $"\"{rig.Name}\"")))
            )
        );
    }
}
