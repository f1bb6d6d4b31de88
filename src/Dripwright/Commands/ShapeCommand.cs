using System.CommandLine;
using Dripwright.Engine.Rigs;

namespace Dripwright.Commands;

/// <summary><c>shape</c>: the rig file's JSON Schema, for editors that check while one writes.</summary>
internal static class ShapeCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var command = new Command("shape", "Print the JSON Schema of a rig file.");
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
