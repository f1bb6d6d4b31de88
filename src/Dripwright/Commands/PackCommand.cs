using System.CommandLine;
using System.Globalization;
using System.Text;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Units;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Screen;
using Dripwright.Sheets;
using Dripwright.Sheets.Model;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>pack</c>: the printed set that goes to the bench.</summary>
internal static class PackCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var into = new Option<string>("--into", "-o")
        {
            Description = Words.Of("program.pack.into"),
            HelpName = Words.Of("program.name.folder"),
            Required = true,
        };
        var paper = new Option<string>("--paper")
        {
            Description = Words.Of("program.pack.paper"),
            HelpName = Words.Of("program.name.size"),
        };
        paper.OneOf("a4", "letter");
        var replace = new Option<bool>("--replace") { Description = Words.Of("program.pack.replace") };
        var revision = new Option<string?>("--revision")
        {
            Description = Words.Of("program.pack.revision"),
            HelpName = Words.Of("program.name.text"),
        };
        var date = DateOption();
        var noSimulation = PlanCommand.SimulationOption();
        var command = new Command("pack", Words.Of("program.pack"))
        {
            file,
            into,
            paper,
            replace,
            revision,
            date,
            noSimulation,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var sound = Planning.Read(call.GetRequiredValue(file), catalogue, around, stop);
                var folder = call.GetRequiredValue(into);
                PackFolder.Check(folder, call.GetValue(replace));
                var options = PlanCommand.Options(call.GetValue(noSimulation));
                var plan = await Planning.Plan(sound, options, around, stop).ConfigureAwait(false);
                var packing = new BuildPackOptions
                {
                    Paper = PaperOf(plan.Rig.Units, call.GetValue(paper)),
                    Revision = call.GetValue(revision) ?? "",
                    Date = call.GetValue(date),
                };
                var files = await LongWork
                    .Run(progress => WholePack.Write(plan, TextOf(sound.Bytes), packing, progress), around, stop)
                    .ConfigureAwait(false);
                var notes = PackFolder.Write(folder, PackList.Of(files), files, call.GetValue(replace), stop);
                around.Out.WriteLine(
                    Words.Of(
                        files.Count == 1 ? "program.packed.one" : "program.packed.many",
                        files.Count,
                        Path.GetFullPath(folder)
                    ) + Warning(plan.Findings)
                );
                if (files.ContainsKey(WholePack.NotMade))
                {
                    around.Out.WriteLine(Words.Of("solids.missing"));
                }

                foreach (var note in notes)
                {
                    around.Error.WriteLine(Plain.Line(note));
                }

                return Exit.Good;
            }
        );
        return command;
    }

    // The clock is never asked: the same call must give the same pack tomorrow.
    private static Option<DateOnly?> DateOption() =>
        new("--date")
        {
            Description = Words.Of("program.pack.date"),
            HelpName = Words.Of("program.name.date"),
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, default, out var day))
                {
                    return day;
                }

                result.Refuse(Words.Of("program.pack.date.wrong", text));
                return null;
            },
        };

    private static Paper PaperOf(UnitSystem units, string? asked) =>
        (asked ?? (units == UnitSystem.Us ? "letter" : "a4")) == "letter" ? Paper.Letter : Paper.A4;

    private static string TextOf(byte[] bytes) =>
        Encoding.UTF8.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);

    private static string Warning(IReadOnlyList<Finding> findings)
    {
        var stops = findings.Count(finding => finding.Level == FindingLevel.Stop);
        return stops == 0 ? "" : "\n" + Words.Count("program.pack.stops", stops);
    }
}
