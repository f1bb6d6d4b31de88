using System.CommandLine;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Commands;

/// <summary><c>schema</c>: the rig file's JSON Schema, for editors that check while you write.</summary>
internal static class SchemaCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var command = new Command("schema", Words.Of("program.schema"));
        command.SetAction(
            (call, stop) =>
            {
                around.Out.Write(RigSchema.Write(shared.ReadCatalogue(call, around, stop)));
                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }
}
