using Dripwright.Engine.Files;
using Dripwright.Language;

namespace Dripwright.Workbench.Failing;

/// <summary>A request cannot be answered as it was asked. The message is for whoever asked.</summary>
internal sealed class Refused(int status, string message) : Exception(message)
{
    /// <summary>Status of the answer.</summary>
    public int Status => status;

    /// <summary>What is wrong in the file that came with the request.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];

    /// <summary>Version that the rig has now, where the request was based on an older one.</summary>
    public int? Version { get; init; }

    /// <summary>[s] When to ask again.</summary>
    public int? RetryAfter { get; init; }

    /// <summary>What was asked for is not there.</summary>
    /// <param name="what">What it is; it stands at the end of the text's key.</param>
    /// <param name="values">What else stands in the text.</param>
    public static Refused NotThere(string what, params object[] values) =>
        new(404, Words.Of($"http.absent.{what}", values));
}
