using System.CommandLine;

namespace Dripwright.Commands;

/// <summary>The rig file that a command reads.</summary>
internal static class RigArgument
{
    public static Argument<string> Make() =>
        new("file") { Description = "The rig file; \"-\" reads standard input.", HelpName = "rig file" };
}
