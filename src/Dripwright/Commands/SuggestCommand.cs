using System.CommandLine;
using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>suggest</c>: from a brief to a handful of rigs, cheapest first.</summary>
internal static class SuggestCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make(Words.Of("program.suggest.file"), Words.Of("program.name.brief"));
        var into = new Option<string?>("--into", "-o")
        {
            Description = Words.Of("program.suggest.into"),
            HelpName = Words.Of("program.name.folder"),
        };
        var replace = new Option<bool>("--replace") { Description = Words.Of("program.suggest.replace") };
        var json = new Option<bool>("--json") { Description = Words.Of("program.suggest.json") };
        var command = new Command("suggest", Words.Of("program.suggest")) { file, into, replace, json };
        command.SetAction(
            async (call, stop) =>
            {
                var path = call.GetRequiredValue(file);
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var reading = BriefReader.Read(SmallFile.Read(path, around, stop), path, catalogue);
                var brief = reading.Brief ?? throw Faults.Refusal(path, reading.Faults);
                var answer = await Search(brief, catalogue, around, stop).ConfigureAwait(false);
                if (call.GetValue(into) is { } folder)
                {
                    Write(folder, answer, call.GetValue(replace));
                }

                if (call.GetValue(json))
                {
                    around.Out.Write(ProposalJson.Write(answer));
                }
                else
                {
                    Consoles.Draw(
                        around,
                        shared.ShowsColour(call, around),
                        console => ProposalView.Draw(console, answer)
                    );
                }

                return answer.Search.Stopped ? Exit.Stopped
                    : answer.Proposals.Count == 0 ? Exit.RigWouldFail
                    : Exit.Good;
            }
        );
        return command;
    }

    // Unlike a plan, a search that is stopped has something to show: the engine itself is asked to end.
    private static async Task<ProposalList> Search(
        Brief brief,
        PartsCatalogue catalogue,
        Surroundings around,
        CancellationToken stop
    )
    {
        var progress = new Latest();
        var task = Task.Run(() => Proposer.Of(brief, catalogue, null, progress, stop), CancellationToken.None);
        await ProgressLine.Follow(task, () => progress.Last, around, stop).ConfigureAwait(false);
        return await task.ConfigureAwait(false);
    }

    private static void Write(string folder, ProposalList answer, bool replace)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            throw new Refusal(Exit.NotWritten, Words.Of("program.suggest.no-folder", folder, SystemReason.Of(wrong)));
        }

        foreach (var (index, proposal) in answer.Proposals.Index())
        {
            var name = (index + 1).ToString(CultureInfo.InvariantCulture) + ".rig.json";
            Writing.File(
                Path.Combine(folder, name),
                Encoding.UTF8.GetBytes(RigWriter.WriteShort(proposal.Rig)),
                replace
            );
        }
    }

    private sealed class Latest : IProgress<ProposeProgress>
    {
        private volatile PlanProgress _last = new(Phrase.Of("progress.start"), 0);

        public PlanProgress Last => _last;

        public void Report(ProposeProgress value) =>
            _last = new(Phrase.Of("progress.search", value.Planned, value.Found), value.Share);
    }
}
