using Dripwright.Engine.Files;

namespace Dripwright.Engine.Rigs;

/// <summary>No rig can be made of the answers.</summary>
/// <param name="fault">What a rig file that says the same would be told.</param>
public sealed class StarterException(Fault fault) : ArgumentOutOfRangeException("answers", fault.ToString())
{
    /// <summary>What a rig file that says the same would be told.</summary>
    public Fault Fault { get; } = fault;
}
