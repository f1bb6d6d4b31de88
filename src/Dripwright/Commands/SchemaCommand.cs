using System.CommandLine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>schema</c>: the JSON Schemas of files, for editors that check while you write.</summary>
internal static class SchemaCommand
{
    private static readonly Dictionary<string, Func<PartsCatalogue, string>> s_files = new(StringComparer.Ordinal)
    {
        ["rig"] = RigSchema.Write,
        ["brief"] = BriefSchema.Write,
        ["catalogue"] = CatalogueSchema.Write,
    };

    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var kind = new Argument<string>("kind")
        {
            Description = Words.Of("program.schema.kind"),
            HelpName = Words.Of("program.name.kind"),
            DefaultValueFactory = _ => "rig",
        };
        kind.OneOf([.. s_files.Keys]);
        var command = new Command("schema", Words.Of("program.schema")) { kind };
        command.SetAction(
            (call, stop) =>
            {
                var write = s_files[call.GetValue(kind)!];
                around.Out.Write(write(shared.ReadCatalogue(call, around, stop)));
                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }
}
