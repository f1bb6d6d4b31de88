using System.CommandLine;
using System.Globalization;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Store;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>empty-bin</c>: deletes for good what lies in the bin. It tells first what that is, and asks.</summary>
internal static class EmptyBinCommand
{
    public static Command Of(Surroundings around)
    {
        var garden = new GardenOption(around);
        var yes = new Option<bool>("--yes") { Description = Words.Of("program.empty-bin.yes") };
        var command = new Command("empty-bin", Words.Of("program.empty-bin")) { yes, garden.Option };
        command.SetAction((call, stop) => garden.In(call, open => Empty(open, around, call.GetValue(yes), stop), stop));
        return command;
    }

    private static async Task Empty(Garden garden, Surroundings around, bool isSure, CancellationToken stop)
    {
        var bin = await garden.BinAsync(stop).ConfigureAwait(false);
        if (bin.Count == 0)
        {
            around.Out.WriteLine(Words.Of("program.empty-bin.nothing", garden.Place));
            return;
        }

        around.Out.WriteLine(Words.Count("program.empty-bin.would", bin.Count));
        foreach (var rig in bin)
        {
            around.Out.WriteLine(Plain.Line($"  {Line(rig)}"));
        }

        await around.Out.FlushAsync(stop).ConfigureAwait(false);
        if (!isSure && !Asked(around, stop))
        {
            throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.empty-bin.sure")));
        }

        // Only what was told: somebody may put more into the bin meanwhile.
        var deleted = await garden.EmptyBinAsync([.. bin.Select(rig => rig.Id)], stop).ConfigureAwait(false);
        around.Out.WriteLine(Words.Count("program.empty-bin.done", deleted));
    }

    private static string Line(DocumentEntry rig) =>
        Words.Of(
            rig.Revisions == 1 ? "program.empty-bin.rig.one" : "program.empty-bin.rig.many",
            rig.Name,
            rig.Revisions,
            rig.RemovedAt?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? ""
        );

    private static bool Asked(Surroundings around, CancellationToken stop) =>
        around.InIsTerminal
        && around.ErrorIsTerminal
        && new Questions(around, stop).Yes(Words.Of("program.empty-bin.ask"));
}
