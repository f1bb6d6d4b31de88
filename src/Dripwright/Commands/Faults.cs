using Dripwright.Engine.Files;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>Tells what is wrong with a file.</summary>
internal static class Faults
{
    /// <summary>One line for each fault and one that counts them.</summary>
    public static Refusal Refusal(string path, IReadOnlyList<Fault> faults) =>
        new(
            Exit.FaultyFile,
            [
                .. faults.Select(fault => fault.Told().ToString()),
                Words.Of(faults.Count == 1 ? "program.faults.one" : "program.faults.many", path, faults.Count),
            ]
        );
}
