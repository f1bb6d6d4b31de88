namespace Dripwright.Engine.Printed;

/// <summary>Why a fitting cannot be made from its parameters.</summary>
/// <param name="Field">Name of the parameter.</param>
/// <param name="Found">What it is.</param>
/// <param name="Expected">What it should be.</param>
/// <param name="Remedy">What to do.</param>
public sealed record PrintFault(string Field, string Found, string Expected, string Remedy)
{
    /// <summary>In one sentence.</summary>
    public override string ToString() => $"{Field}: found {Found}; expected {Expected}; {Remedy}";
}
