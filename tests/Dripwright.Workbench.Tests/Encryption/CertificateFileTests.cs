using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Encryption;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>A certificate that the grower gives: every usual kind of file is read, and what is wrong with one is said.</summary>
public sealed class CertificateFileTests : IDisposable
{
    private const string Passphrase = "two ripe peppers";
    private readonly GardenAuthority _authority = new();
    private readonly X509Certificate2 _leaf;

    public CertificateFileTests() =>
        _leaf = Authority.Server(
            _authority.Signing,
            GardenAuthority.Names("dns", GardenAuthority.Name),
            GardenAuthority.Now
        );

    private static PbeParameters Locking => new(PbeEncryptionAlgorithm.Aes256Cbc, HashAlgorithmName.SHA256, 10_000);

    private string Key => _leaf.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem();

    private string Chain => _leaf.ExportCertificatePem() + "\n" + _authority.Signing.ExportCertificatePem();

    public void Dispose()
    {
        _leaf.Dispose();
        _authority.Dispose();
    }

    [Fact]
    public void Text_with_the_key_in_it_beside_it_or_locked_and_an_old_kind_of_key_are_read()
    {
        var key = _leaf.GetECDsaPrivateKey()!;
        foreach (
            var place in new[]
            {
                new CertificatePlace(Put("one.pem", Chain + "\n" + Key)),
                new CertificatePlace(Put("keyfirst.pem", Key + "\n" + Chain)),
                new CertificatePlace(Put("chain.pem", Chain), Put("key.pem", Key)),
                new CertificatePlace(Put("chain.pem", Chain), Put("old.pem", key.ExportECPrivateKeyPem())),
                new CertificatePlace(
                    Put("chain.pem", Chain),
                    Put("locked.pem", key.ExportEncryptedPkcs8PrivateKeyPem(Passphrase, Locking)),
                    Passphrase
                ),
            }
        )
        {
            var read = CertificateFile.Read(place);
            Assert.Equal([GardenAuthority.Name], read.Names);
            Assert.Equal(_leaf.Thumbprint, read.Thumbprint);
            Assert.Equal(
                [_authority.Signing.Thumbprint],
                read.Context.IntermediateCertificates.Select(one => one.Thumbprint)
            );
        }
    }

    [Fact]
    public void A_PFX_file_and_one_of_an_RSA_key_are_read()
    {
        var all = new X509Certificate2Collection
        {
            _leaf,
            X509CertificateLoader.LoadCertificate(_authority.Signing.RawData),
        };
        var read = CertificateFile.Read(
            new CertificatePlace(Put("one.pfx", all.Export(X509ContentType.Pfx, Passphrase)!), null, Passphrase)
        );
        Assert.Equal(_leaf.Thumbprint, read.Thumbprint);
        Assert.Single(read.Context.IntermediateCertificates);

        using var rsa = RSA.Create(2048);
        var request = new CertificateRequest("CN=x", rsa, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        request.CertificateExtensions.Add(GardenAuthority.Names("dns", "garden.example"));
        using var own = request.CreateSelfSigned(GardenAuthority.Now.AddDays(-1), GardenAuthority.Now.AddDays(9));
        var text = own.ExportCertificatePem() + "\n" + rsa.ExportRSAPrivateKeyPem();
        Assert.Equal(["garden.example"], CertificateFile.Read(new CertificatePlace(Put("rsa.pem", text))).Names);
    }

    [Fact]
    public void What_is_wrong_with_a_file_is_told_with_its_name_and_what_to_do()
    {
        using var other = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var rsa = RSA.Create(2048);
        var key = _leaf.GetECDsaPrivateKey()!;
        var locked = key.ExportEncryptedPkcs8PrivateKeyPem(Passphrase, Locking);
        var pfx = _leaf.Export(X509ContentType.Pfx, Passphrase)!;
        var chain = Put("chain.pem", Chain);
        var bare = _leaf.RawData;
        Wrong(new(Path.Combine(_authority.Folder, "nowhere.pem")), "nowhere.pem", "no such file");
        Wrong(new(Path.Combine(_authority.Folder, "no", "where.pem")), "where.pem", "no such file");
        Wrong(new(Put("letter.txt", "Dear all,")), "letter.txt", "not a certificate");
        Wrong(new(Put("empty.pem", "")), "empty.pem", "not a certificate");
        Wrong(new(Put("cut.pem", Chain[..200])), "cut.pem", "not a certificate");
        Wrong(new(Put("only.pem", Key)), "only.pem", "not a certificate");
        Wrong(new(chain), "chain.pem", "no private key");
        Wrong(new(Put("bare.cer", bare)), "bare.cer", "no private key");
        Wrong(new(chain, Put("other.pem", other.ExportPkcs8PrivateKeyPem())), "other.pem", "does not belong");
        Wrong(new(chain, Put("rsa.pem", rsa.ExportPkcs8PrivateKeyPem())), "rsa.pem", "does not belong");
        Wrong(new(chain, chain), "chain.pem", "no private key");
        Wrong(new(chain, Put("locked.pem", locked)), "locked.pem", "DRIPWRIGHT_CERTIFICATE_PASSPHRASE");
        Wrong(new(chain, Put("locked.pem", locked), "wrong"), "locked.pem", "does not open it");
        Wrong(new(Put("one.pfx", pfx)), "one.pfx", "Put the passphrase");
        Wrong(new(Put("one.pfx", pfx), null, "wrong"), "one.pfx", "does not open it");
        Wrong(new(Put("cut.pfx", pfx[..^30]), null, Passphrase), "cut.pfx", "");
        Wrong(new(_authority.Folder), "", "cannot be read");
        // An authority's client, not a server.
        var request = new CertificateRequest("CN=x", other, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(
            new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.2")], critical: false)
        );
        using var client = request.CreateSelfSigned(GardenAuthority.Now.AddDays(-1), GardenAuthority.Now.AddDays(9));
        var text = client.ExportCertificatePem() + "\n" + other.ExportPkcs8PrivateKeyPem();
        Wrong(new(Put("client.pem", text)), "client.pem", "not for servers");
    }

    [Fact]
    public void A_name_is_covered_as_browsers_see_it()
    {
        using var leaf = Authority.Server(
            _authority.Signing,
            ["greenhouse.test", "*.farm.test"],
            [System.Net.IPAddress.Parse("192.168.1.20")],
            GardenAuthority.Now
        );
        var certificate = new ServerCertificate(leaf, []);
        Assert.All(
            ["greenhouse.test", "GreenHouse.Test", "a.farm.test", "192.168.1.20"],
            name => Assert.True(certificate.Covers(name))
        );
        Assert.All(
            ["farm.test", "a.b.farm.test", "192.168.1.21", "house.test"],
            name => Assert.False(certificate.Covers(name))
        );
        Assert.Equal("greenhouse.test", certificate.BestName);
    }

    private static void Wrong(CertificatePlace place, string name, string what)
    {
        var told = Assert.Throws<EncryptionException>(() => CertificateFile.Read(place)).Message;
        Assert.Contains(name, told, StringComparison.Ordinal);
        Assert.Contains(what, told, StringComparison.Ordinal);
        Assert.DoesNotContain(Passphrase, told, StringComparison.Ordinal);
    }

    private string Put(string name, string text) => _authority.Write(name, text);

    private string Put(string name, byte[] bytes)
    {
        var file = Path.Combine(_authority.Folder, name);
        File.WriteAllBytes(file, bytes);
        return file;
    }
}
