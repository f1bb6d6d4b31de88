using System.Net;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;

namespace Dripwright.Workbench.Encryption;

/// <summary>A certificate that a server can show, with its key and those that signed it.</summary>
public sealed class ServerCertificate
{
    private readonly X509Certificate2 _leaf;

    internal ServerCertificate(X509Certificate2 leaf, X509Certificate2Collection signers)
    {
        _leaf = leaf;
        Context = SslStreamCertificateContext.Create(leaf, signers, offline: true);
        var also = leaf.Extensions.OfType<X509SubjectAlternativeNameExtension>().FirstOrDefault();
        Names = [.. also?.EnumerateDnsNames().Select(name => name.ToLowerInvariant()) ?? []];
        Addresses = [.. also?.EnumerateIPAddresses() ?? []];
    }

    /// <summary>Names it is for.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Addresses it is for.</summary>
    public IReadOnlyList<IPAddress> Addresses { get; }

    /// <summary>From when it holds, UTC.</summary>
    public DateTime From => _leaf.NotBefore.ToUniversalTime();

    /// <summary>Until when it holds, UTC.</summary>
    public DateTime Until => _leaf.NotAfter.ToUniversalTime();

    /// <summary>The name or address under which to show the workbench.</summary>
    public string BestName =>
        Names.FirstOrDefault(name => name != HostName.Own && name[0] != '*')
        ?? Addresses.FirstOrDefault(address => !IPAddress.IsLoopback(address))?.ToString()
        ?? HostName.Own;

    /// <summary>Tells it from every other one.</summary>
    internal string Thumbprint => _leaf.Thumbprint;

    internal SslStreamCertificateContext Context { get; }

    /// <summary>Whether a browser that calls the machine so is content.</summary>
    internal bool Covers(string name) =>
        IPAddress.TryParse(name, out var address)
            ? Addresses.Contains(address)
            : Names.Any(one =>
                one.Equals(name, StringComparison.OrdinalIgnoreCase)
                // A star stands for one word (RFC 6125, section 6.4.3).
                || (
                    one.StartsWith("*.", StringComparison.Ordinal)
                    && name.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot
                    && one[1..].Equals(name[dot..], StringComparison.OrdinalIgnoreCase)
                )
            );
}
