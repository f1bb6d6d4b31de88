using Dripwright.Engine.Files;

namespace Dripwright.Commands;

/// <summary>Tells what is wrong with a file.</summary>
internal static class Faults
{
    /// <summary>One line for each fault and one that counts them.</summary>
    public static Refusal Refusal(string path, IReadOnlyList<Fault> faults) =>
        new(
            Exit.FaultyFile,
            [
                .. faults.Select(fault => fault.ToString()),
                $"{path}: {(faults.Count == 1 ? "1 fault" : $"{faults.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} faults")}. Nothing was planned.",
            ]
        );
}
