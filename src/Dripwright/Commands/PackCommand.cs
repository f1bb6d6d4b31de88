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

namespace Dripwright.Commands;

/// <summary><c>pack</c>: the printed set that goes to the bench.</summary>
internal static class PackCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var into = new Option<string>("--into", "-o")
        {
            Description = "Folder to write the build pack into; it is written whole or not at all.",
            HelpName = "folder",
            Required = true,
        };
        var paper = new Option<string>("--paper")
        {
            Description = "a4 or letter. Left out: letter for a rig in US units, a4 for a metric one.",
            HelpName = "size",
        };
        paper.AcceptOnlyFromAmong("a4", "letter");
        var replace = new Option<bool>("--replace")
        {
            Description =
                "Replace a build pack that is there. Refused if the folder holds any other file, or a changed one.",
        };
        var revision = new Option<string?>("--revision")
        {
            Description = "Revision to print in the title blocks.",
            HelpName = "text",
        };
        var date = DateOption();
        var noSimulation = PlanCommand.SimulationOption();
        var command = new Command(
            "pack",
            "Write the build pack: drawings, lists, forms, printed parts, plan.json and the rig file."
        )
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
                    $"{Count(files.Count, "file")} in {Path.GetFullPath(folder)}{Warning(plan.Findings)}"
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
            Description = "Date to print in the title blocks, such as 2026-03-01. Left out: no date.",
            HelpName = "date",
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, default, out var day))
                {
                    return day;
                }

                result.AddError($"Option '--date': found \"{text}\"; expected a date such as 2026-03-01.");
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
        return stops == 0
            ? ""
            : $"\nDo not build it yet: {Count(stops, "finding")} of level \"stop\". To see what is wrong: dripwright plan";
    }

    private static string Count(int number, string thing) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {thing}{(number == 1 ? "" : "s")}";
}
