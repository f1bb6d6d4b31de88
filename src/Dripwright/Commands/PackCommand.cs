using System.CommandLine;
using System.Globalization;
using System.Text;
using Dripwright.Engine.Findings;
using Dripwright.Files;
using Dripwright.Sheets;

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
            Description = "a4 or letter. Left out: letter for a rig in US units, a4 for one in metric.",
            HelpName = "size",
        };
        paper.AcceptOnlyFromAmong("a4", "letter");
        var replace = new Option<bool>("--replace") { Description = "Replace a build pack that stands there." };
        var noDraws = PlanCommand.DrawsOption();
        var command = new Command("pack", "Write the build pack: drawings, lists, forms, plan.json and the rig file.")
        {
            file,
            into,
            paper,
            replace,
            noDraws,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var catalogue = shared.ReadCatalogue(call, around);
                var sound = Planning.Read(call.GetRequiredValue(file), catalogue, around);
                var options = PlanCommand.Options(call.GetValue(noDraws));
                var plan = await Planning.Plan(sound, catalogue, options, around, stop).ConfigureAwait(false);
                var files = await Task.Run(
                        () => BuildPack.Write(plan, TextOf(sound.Bytes), PackOptions(plan, call.GetValue(paper))),
                        stop
                    )
                    .WaitAsync(stop)
                    .ConfigureAwait(false);
                var folder = call.GetRequiredValue(into);
                PackFolder.Write(folder, files, call.GetValue(replace), stop);
                around.Out.WriteLine(
                    $"{Count(files.Count, "file")} in {Path.GetFullPath(folder)}{Warning(plan.Findings)}"
                );
                return Exit.Good;
            }
        );
        return command;
    }

    private static BuildPackOptions PackOptions(Engine.Plan plan, string? paper) =>
        new() { Letter = paper is null ? plan.Rig.Units == Engine.Rigs.UnitSystem.Us : paper == "letter" };

    private static string TextOf(byte[] bytes) =>
        Encoding.UTF8.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);

    private static string Warning(IReadOnlyList<Finding> findings)
    {
        var stops = findings.Count(finding => finding.Level == FindingLevel.Stop);
        return stops == 0
            ? ""
            : $"\nDo not build it yet: {Count(stops, "finding")} of level \"stop\". See them with: dripwright plan";
    }

    private static string Count(int number, string thing) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {thing}{(number == 1 ? "" : "s")}";
}
