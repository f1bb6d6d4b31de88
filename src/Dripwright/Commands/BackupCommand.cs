using System.CommandLine;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>backup</c>: a copy of the garden, also while it is in use.</summary>
internal static class BackupCommand
{
    public static Command Of(Surroundings around) =>
        FromGarden.Of(
            around,
            "backup",
            RigArgument.Make(Words.Of("program.backup.file"), Words.Of("program.name.backup")),
            null,
            async (garden, _, to, stop) =>
            {
                await garden.BackupAsync(to.Path, to.Replace, stop).ConfigureAwait(false);
                return Words.Of("program.backup.done", to.Path, garden.Place);
            }
        );
}
