namespace Dripwright.Workbench.Setup;

/// <summary>Where the server's certificate lies.</summary>
/// <param name="File">A PEM file with the certificate and those that signed it, or a PFX file.</param>
/// <param name="KeyFile">A PEM file with its key; null where the first file has it.</param>
/// <param name="Passphrase">What opens the PFX file or the key; null where nothing locks it.</param>
/// <param name="IsOwn">Whether Dripwright made it, with an authority of the garden's own.</param>
public sealed record CertificatePlace(
    string File,
    string? KeyFile = null,
    string? Passphrase = null,
    bool IsOwn = false
)
{
    /// <summary>The places, without what opens them.</summary>
    public override string ToString() => KeyFile is null ? File : $"{File}, {KeyFile}";
}
