namespace Dripwright.Solids;

/// <summary>
/// The library that computes solids has no build for this machine's system and processor, or it was left out. Everything that needs no
/// solid works all the same.
/// </summary>
public sealed class SolidsMissingException : Exception
{
    /// <summary>Where nothing more is known.</summary>
    public SolidsMissingException()
        : this("The library that computes solids is missing.") { }

    /// <param name="message">What is missing, in the loader's own words.</param>
    public SolidsMissingException(string message)
        : base(message) { }

    /// <param name="message">What is missing.</param>
    /// <param name="innerException">How that showed.</param>
    public SolidsMissingException(string message, Exception innerException)
        : base(message, innerException) { }
}
