using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Printed;

/// <summary>Why a fitting cannot be made from its parameters.</summary>
/// <param name="Field">Name of the parameter.</param>
/// <param name="Found">What it is.</param>
/// <param name="Expected">What it should be.</param>
/// <param name="Remedy">What to do.</param>
public sealed record PrintFault(string Field, Phrase Found, Phrase Expected, Phrase Remedy)
{
    /// <summary>In one line, for whoever reads an exception; words for a grower are made at the edge.</summary>
    public override string ToString() => $"{Field}: found {Found}; expected {Expected}; {Remedy}";
}
