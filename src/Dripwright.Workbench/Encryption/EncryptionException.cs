namespace Dripwright.Workbench.Encryption;

/// <summary>A certificate cannot be read or made, and it is not the program's mistake.</summary>
/// <param name="message">One clear sentence for the grower, and what to do.</param>
/// <param name="inner">What it came from.</param>
public sealed class EncryptionException(string message, Exception? inner = null) : Exception(message, inner);
