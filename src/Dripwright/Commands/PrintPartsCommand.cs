using System.CommandLine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Pack;
using Dripwright.Screen;
using Dripwright.Solids.Files;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>print-parts</c>: the printed parts alone, for the printer.</summary>
internal static class PrintPartsCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var file = RigArgument.Make();
        var into = new Option<string>("--into", "-o")
        {
            Description = Words.Of("program.print-parts.into"),
            HelpName = Words.Of("program.name.folder"),
            Required = true,
        };
        var command = new Command("print-parts", Words.Of("program.print-parts")) { file, into };
        command.SetAction(
            async (call, stop) =>
            {
                var catalogue = shared.ReadCatalogue(call, around, stop);
                var sound = Planning.Read(call.GetRequiredValue(file), catalogue, around, stop);
                var folder = call.GetRequiredValue(into);
                PackFolder.Check(folder, replace: false);
                var layout = RigLayout.Of(sound.Resolved);
                // The sockets' walls are made for what the stand brings to its joints.
                var parts = await LongWork
                    .Run(
                        _ => PrintedParts.Of(sound.Rig, layout, StandPlanner.Of(layout, StandOptions.Of(sound.Rig))),
                        around,
                        stop
                    )
                    .ConfigureAwait(false);
                var told = new PlanWords(sound.Rig.Units);
                foreach (var refused in parts.Refused)
                {
                    around.Error.WriteLine(
                        Plain.Line(Words.Of("program.print-parts.refused", sound.Path, told.Of(refused.Sentence)))
                    );
                }

                if (parts.Parts.Count == 0)
                {
                    throw new Refusal(Exit.FaultyFile, Words.Of("program.print-parts.none", sound.Path));
                }

                var files = await LongWork
                    .Run(progress => PrintFiles.Write(parts, sound.Rig.Units, progress), around, stop)
                    .ConfigureAwait(false);
                PackFolder.Write(folder, PackList.Of(files), files, replace: false, stop);
                var pieces = parts.Parts.Sum(part => part.Count * part.Design.Pieces);
                var first = parts.Parts.Any(part => part.Number == PrintedParts.Coupon)
                    ? " " + Words.Of("program.print-parts.first", PrintedParts.Coupon)
                    : "";
                around.Out.WriteLine(
                    Words.Of("program.print-parts.done", parts.Parts.Count, pieces, Path.GetFullPath(folder)) + first
                );
                string[] more =
                [
                    .. PrintedParts
                        .Small(sound.Rig, layout)
                        .Where(small => !small.Wanted && small.Parts.Count > 0)
                        .Select(small => small.Field[(small.Field.LastIndexOf('.') + 1)..]),
                ];
                if (more.Length > 0)
                {
                    around.Out.WriteLine(Words.Of("program.print-parts.more", string.Join(", ", more)));
                }

                return Exit.Good;
            }
        );
        return command;
    }
}
