using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Dripwright.Workbench.Encryption;

/// <summary>Makes the certificates of a garden's own authority. Why they look like this: docs/decisions/0011-encryption.md</summary>
internal static class Authority
{
    /// <summary>How long the authority lasts. After that every phone must trust a new one.</summary>
    public const int Years = 10;

    /// <summary>Most days of a server's certificate that browsers take (398 is the rule of their makers for public ones; from memory).</summary>
    public const int MostDays = 398;

    private const string ForServers = "1.3.6.1.5.5.7.3.1";

    // A phone's clock may be behind.
    private static readonly TimeSpan s_early = TimeSpan.FromDays(1);

    /// <summary>The certificate that people trust, with its key. It signs once, and then the key is to be forgotten.</summary>
    /// <param name="names">Names it may sign for, with all under them.</param>
    /// <param name="now">The time.</param>
    public static X509Certificate2 Root(IReadOnlyList<string> names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        // The date tells it from the one that a later call makes.
        var made = now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var request = ForAuthority(key, $"{Short(names)} garden authority {made}", names, below: 1);
        return request.CreateSelfSigned(now - s_early, now.AddYears(Years));
    }

    /// <summary>The authority that signs for the server, under the one that people trust. It cannot make a further one.</summary>
    /// <param name="root">The one that people trust, with its key.</param>
    /// <param name="names">Names it may sign for; the same again, for some systems do not read them in a certificate that a person trusted.</param>
    public static X509Certificate2 Signing(X509Certificate2 root, IReadOnlyList<string> names)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = ForAuthority(key, $"{Short(names)} garden signing", names, below: 0);
        return Signed(request, root, key, From(root), Until(root));
    }

    /// <summary>A server's certificate with its key.</summary>
    /// <param name="signing">Who signs, with its key.</param>
    /// <param name="names">The server's names.</param>
    /// <param name="addresses">Its addresses.</param>
    /// <param name="now">The time.</param>
    public static X509Certificate2 Server(
        X509Certificate2 signing,
        IEnumerable<string> names,
        IEnumerable<IPAddress> addresses,
        DateTimeOffset now
    )
    {
        var also = new SubjectAlternativeNameBuilder();
        foreach (var name in names)
        {
            also.AddDnsName(name);
        }

        foreach (var address in addresses)
        {
            also.AddIpAddress(address);
        }

        return Server(signing, also.Build(), now);
    }

    /// <summary>A server's certificate with its key, for whatever names an extension says.</summary>
    internal static X509Certificate2 Server(X509Certificate2 signing, X509Extension? names, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Dripwright garden", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        request.CertificateExtensions.Add(UseForServers());
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        if (names is not null)
        {
            request.CertificateExtensions.Add(names);
        }

        // The last second counts as part of the last day.
        var from = now - s_early;
        var end = from.AddDays(MostDays).AddSeconds(-1);
        return Signed(request, signing, key, from, end < Until(signing) ? end : Until(signing));
    }

    private static CertificateRequest ForAuthority(ECDsa key, string called, IReadOnlyList<string> names, int below)
    {
        var subject = new X500DistinguishedNameBuilder();
        subject.AddCommonName(called);
        var request = new CertificateRequest(subject.Build(), key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(
            X509BasicConstraintsExtension.CreateForCertificateAuthority(pathLengthConstraint: below)
        );
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        request.CertificateExtensions.Add(UseForServers());
        request.CertificateExtensions.Add(NameConstraints.Of(names));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        return request;
    }

    private static X509Certificate2 Signed(
        CertificateRequest request,
        X509Certificate2 by,
        ECDsa key,
        DateTimeOffset from,
        DateTimeOffset to
    )
    {
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(by, true, false));
        var serial = RandomNumberGenerator.GetBytes(16);
        // A serial number is positive and takes no more bytes than it must.
        serial[0] = (byte)((serial[0] & 0x7f) | 0x40);
        var start = from < From(by) ? From(by) : from;
        using var bare = request.Create(by, start, to, serial);
        return bare.CopyWithPrivateKey(key);
    }

    // The platform tells both in the machine's own time.
    private static DateTimeOffset From(X509Certificate2 of) => new(of.NotBefore);

    private static DateTimeOffset Until(X509Certificate2 of) => new(of.NotAfter);

    private static X509EnhancedKeyUsageExtension UseForServers() =>
        new([new System.Security.Cryptography.Oid(ForServers)], false);

    // Names of certificates have room for 64 letters (RFC 5280, appendix A.1).
    private static string Short(IReadOnlyList<string> names)
    {
        var name = names.FirstOrDefault(one => one != HostName.Own) ?? HostName.Own;
        return name.Length <= 32 ? name : name[..32];
    }
}
