using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Dripwright.Language;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Encryption;

/// <summary>Reads a server's certificate from its file, and tells what is wrong with it.</summary>
internal static class CertificateFile
{
    /// <summary>Variable of the environment with what opens the file.</summary>
    public const string PassphraseVariable = "DRIPWRIGHT_CERTIFICATE_PASSPHRASE";

    private const int MostBytes = 1 << 20;
    private const string ForServers = "1.3.6.1.5.5.7.3.1";

    // What Windows, and after it every system, says of a wrong passphrase.
    private const int WrongPassphrase = unchecked((int)0x80070056);

    /// <summary>The certificate of a place.</summary>
    /// <exception cref="EncryptionException">It cannot be used.</exception>
    public static ServerCertificate Read(CertificatePlace place) => Of(place, Bytes(place));

    /// <summary>The bytes of all files of a place.</summary>
    /// <exception cref="EncryptionException">One cannot be read.</exception>
    public static IReadOnlyList<byte[]> Bytes(CertificatePlace place) =>
        place.KeyFile is null ? [BytesOf(place.File)] : [BytesOf(place.File), BytesOf(place.KeyFile)];

    /// <summary>The certificate that was read from a place.</summary>
    public static ServerCertificate Of(CertificatePlace place, IReadOnlyList<byte[]> bytes)
    {
        var all = IsPem(bytes[0]) ? OfPem(place, bytes) : OfPfx(place, bytes[0]);
        var leaf = all[0];
        var uses = leaf.Extensions.OfType<X509EnhancedKeyUsageExtension>().FirstOrDefault()?.EnhancedKeyUsages;
        if (uses is not null && !uses.Cast<Oid>().Any(use => use.Value == ForServers))
        {
            throw new EncryptionException(Words.Of("encryption.file.use", place.File));
        }

        all.RemoveAt(0);
        return new ServerCertificate(Usable(leaf), all);
    }

    private static bool IsPem(byte[] bytes) =>
        Encoding.Latin1.GetString(bytes).Contains("-----BEGIN ", StringComparison.Ordinal);

    private static X509Certificate2Collection OfPfx(CertificatePlace place, byte[] bytes)
    {
        X509Certificate2Collection all;
        try
        {
            if (bytes.Length == 0)
            {
                throw new CryptographicException();
            }

            if (X509Certificate2.GetCertContentType(bytes) is not X509ContentType.Pfx)
            {
                throw new EncryptionException(Words.Of("encryption.file.no-key", place.File));
            }

            all = X509CertificateLoader.LoadPkcs12Collection(bytes, place.Passphrase, X509KeyStorageFlags.Exportable);
        }
        catch (CryptographicException wrong) when (wrong.HResult == WrongPassphrase)
        {
            throw Locked(place, place.File, wrong);
        }
        catch (CryptographicException wrong)
        {
            throw new EncryptionException(Words.Of("encryption.file.unknown", place.File), wrong);
        }

        // The one with a key is the server's; the others signed it.
        var leaf =
            all.FirstOrDefault(one => one.HasPrivateKey)
            ?? throw new EncryptionException(Words.Of("encryption.file.no-key", place.File));
        all.Remove(leaf);
        all.Insert(0, leaf);
        return all;
    }

    private static X509Certificate2Collection OfPem(CertificatePlace place, IReadOnlyList<byte[]> bytes)
    {
        var all = new X509Certificate2Collection();
        try
        {
            all.ImportFromPem(Encoding.Latin1.GetString(bytes[0]));
        }
        catch (CryptographicException wrong)
        {
            throw new EncryptionException(Words.Of("encryption.file.unknown", place.File), wrong);
        }

        if (all.Count == 0)
        {
            throw new EncryptionException(Words.Of("encryption.file.unknown", place.File));
        }

        all[0] = PemKey.Put(all[0], place, Encoding.Latin1.GetString(bytes[^1]));
        return all;
    }

    internal static EncryptionException Locked(CertificatePlace place, string file, Exception inner) =>
        new(
            Words.Of(
                place.Passphrase is null ? "encryption.file.locked" : "encryption.file.passphrase",
                file,
                PassphraseVariable
            ),
            inner
        );

    // Windows shows no certificate whose key lies in memory alone.
    private static X509Certificate2 Usable(X509Certificate2 leaf) =>
        OperatingSystem.IsWindows()
            ? X509CertificateLoader.LoadPkcs12(leaf.Export(X509ContentType.Pkcs12), null)
            : leaf;

    private static byte[] BytesOf(string path)
    {
        try
        {
            return new FileInfo(path) is { Exists: true, Length: > MostBytes }
                ? throw new EncryptionException(Words.Of("encryption.file.unknown", path))
                : File.ReadAllBytes(path);
        }
        catch (Exception wrong) when (wrong is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new EncryptionException(Words.Of("encryption.file.none", path), wrong);
        }
        catch (Exception wrong)
            when (wrong is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new EncryptionException(Words.Of("encryption.file.unread", path), wrong);
        }
    }
}
