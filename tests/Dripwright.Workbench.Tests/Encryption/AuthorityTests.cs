using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Encryption;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>What a garden's own authority can sign for, judged by OpenSSL and by the platform, neither of which we wrote.</summary>
public sealed class AuthorityTests : IDisposable
{
    private readonly GardenAuthority _authority = new();

    public void Dispose() => _authority.Dispose();

    [Theory]
    [InlineData("dns", "greenhouse.test")]
    [InlineData("dns", "phone.greenhouse.test")]
    [InlineData("dns", "localhost")]
    [InlineData("address", "192.168.1.20")]
    [InlineData("address", "10.255.0.1")]
    [InlineData("address", "172.31.255.255")]
    [InlineData("address", "fd00::20")]
    [InlineData("address", "fe80::1")]
    [InlineData("address", "127.0.0.1")]
    [InlineData("address", "::1")]
    public async Task What_it_signs_for_a_permitted_name_is_accepted(string kind, string name)
    {
        using var leaf = Leaf(_authority.Signing, kind, name);
        Assert.Equal((0, ""), await Openssl(leaf, true, kind is "dns" ? "-verify_hostname" : "-verify_ip", name));
        Assert.Equal([], Platform(leaf));
    }

    [Theory]
    [InlineData("dns", "bank.example")]
    [InlineData("dns", "notgreenhouse.test")]
    [InlineData("dns", "test")]
    [InlineData("dns", "greenhouse.test.example")]
    [InlineData("dns", "*.test")]
    [InlineData("address", "203.0.113.5")]
    [InlineData("address", "11.0.0.1")]
    [InlineData("address", "172.32.0.1")]
    [InlineData("address", "192.169.0.1")]
    [InlineData("address", "2001:db8::5")]
    [InlineData("address", "::2")]
    [InlineData("mail", "somebody@bank.example")]
    [InlineData("mail", "somebody@greenhouse.test")]
    [InlineData("uri", "https://bank.example/")]
    [InlineData("uri", "https://greenhouse.test/")]
    public async Task What_either_of_its_keys_signs_for_any_other_name_is_refused(string kind, string name)
    {
        using var leaf = Leaf(_authority.Signing, kind, name);
        var (exit, said) = await Openssl(leaf, true);
        Assert.NotEqual(0, exit);
        Assert.Contains("permitted subtree violation", said, StringComparison.Ordinal);
        Assert.NotEqual([], Platform(leaf));
        // The one that people trust, were its key not forgotten, could do no more.
        using var direct = Leaf(_authority.Root, kind, name);
        (exit, said) = await Openssl(direct, false);
        Assert.NotEqual(0, exit);
        Assert.Contains("permitted subtree violation", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_of_the_old_kind_is_held_to_the_same_names()
    {
        // Without alternative names OpenSSL takes the common name for a host's.
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=bank.example", key, HashAlgorithmName.SHA256);
        using var leaf = request.Create(
            _authority.Signing,
            GardenAuthority.Now.AddHours(-1),
            GardenAuthority.Now.AddDays(30),
            [1, 2, 3]
        );
        var (exit, said) = await Openssl(leaf, true, "-verify_hostname", "bank.example");
        Assert.NotEqual(0, exit);
        Assert.Contains("permitted subtree violation", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Under_the_signing_key_there_is_no_further_authority()
    {
        string[] all = ["bank.example", "greenhouse.test"];
        using var below = Authority.Signing(_authority.Signing, all);
        using var leaf = Leaf(below, "dns", "greenhouse.test");
        var chain = _authority.Write(
            "chain.pem",
            _authority.Signing.ExportCertificatePem() + "\n" + below.ExportCertificatePem()
        );
        var file = _authority.Write("leaf.pem", leaf.ExportCertificatePem());
        var (exit, said) = await Tool.Run(
            "openssl",
            "openssl",
            "verify",
            "-CAfile",
            _authority.RootFile,
            "-untrusted",
            chain,
            file
        );
        Assert.NotEqual(0, exit);
        Assert.Contains("path length constraint exceeded", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_certificate_says_what_it_is_for_and_nothing_else()
    {
        foreach (var (authority, below) in new[] { (_authority.Root, 1), (_authority.Signing, 0) })
        {
            var basic = authority.Extensions.OfType<X509BasicConstraintsExtension>().Single();
            Assert.True(basic is { Critical: true, CertificateAuthority: true, HasPathLengthConstraint: true });
            Assert.Equal(below, basic.PathLengthConstraint);
            var usage = authority.Extensions.OfType<X509KeyUsageExtension>().Single();
            Assert.Equal((true, X509KeyUsageFlags.KeyCertSign), (usage.Critical, usage.KeyUsages));
            Assert.True(authority.Extensions.Single(one => one.Oid!.Value == "2.5.29.30").Critical);
            Assert.Equal([GardenAuthority.Name, "localhost"], NameConstraints.Names(authority));
        }

        using var leaf = Leaf(_authority.Signing, "dns", GardenAuthority.Name);
        Assert.False(leaf.Extensions.OfType<X509BasicConstraintsExtension>().Single().CertificateAuthority);
        var use = leaf.Extensions.OfType<X509EnhancedKeyUsageExtension>().Single().EnhancedKeyUsages;
        Assert.Equal(["1.3.6.1.5.5.7.3.1"], use.Cast<Oid>().Select(one => one.Value));
        // Both ends count.
        Assert.InRange((leaf.NotAfter - leaf.NotBefore).TotalSeconds + 1, 0, 398 * 86_400);
    }

    [Theory]
    [InlineData("greenhouse", null)]
    [InlineData("com", null)]
    [InlineData("app", null)]
    [InlineData("*.example.org", null)]
    [InlineData("green house.local", null)]
    [InlineData("green_house.local", null)]
    [InlineData("192.168.1.20", null)]
    [InlineData("greenhouse.", null)]
    [InlineData("", null)]
    [InlineData(" Greenhouse.LOCAL ", "greenhouse.local")]
    [InlineData("gewächshaus.example", "xn--gewchshaus-s5a.example")]
    [InlineData("localhost", "localhost")]
    public void A_name_is_a_full_one_for_permission_goes_to_all_names_under_it(string text, string? read)
    {
        if (read is null)
        {
            Assert.Contains(
                text,
                Assert.Throws<EncryptionException>(() => HostName.Read(text)).Message,
                StringComparison.Ordinal
            );
        }
        else
        {
            Assert.Equal(read, HostName.Read(text));
        }
    }

    private static X509Certificate2 Leaf(X509Certificate2 by, string kind, string name) =>
        Authority.Server(by, GardenAuthority.Names(kind, name), GardenAuthority.Now);

    private async Task<(int Exit, string Said)> Openssl(
        X509Certificate2 leaf,
        bool isUnderSigning,
        params string[] more
    )
    {
        var file = _authority.Write("leaf.pem", leaf.ExportCertificatePem());
        string[] between = isUnderSigning ? ["-untrusted", _authority.SigningFile] : [];
        var (exit, said) = await Tool.Run(
            "openssl",
            "openssl",
            [
                "verify",
                "-x509_strict",
                "-purpose",
                "sslserver",
                "-CAfile",
                _authority.RootFile,
                .. between,
                .. more,
                file,
            ]
        );
        return (exit, exit == 0 ? said.Replace($"{file}: OK", "", StringComparison.Ordinal).Trim() : said);
    }

    /// <summary>What the platform finds wrong when it trusts the root.</summary>
    private IReadOnlyList<X509ChainStatusFlags> Platform(X509Certificate2 leaf)
    {
        using var chain = new X509Chain
        {
            ChainPolicy =
            {
                TrustMode = X509ChainTrustMode.CustomRootTrust,
                RevocationMode = X509RevocationMode.NoCheck,
                DisableCertificateDownloads = true,
            },
        };
        chain.ChainPolicy.CustomTrustStore.Add(_authority.Root);
        chain.ChainPolicy.ExtraStore.Add(_authority.Signing);
        chain.Build(leaf);
        return [.. chain.ChainStatus.Select(one => one.Status)];
    }
}
