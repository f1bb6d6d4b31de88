using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Language;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Encryption;

/// <summary>The key of a certificate, from a text file (RFC 7468).</summary>
internal static class PemKey
{
    private const string Locked = "ENCRYPTED PRIVATE KEY";

    /// <summary>The certificate with its key.</summary>
    /// <param name="bare">The certificate.</param>
    /// <param name="place">Where it lies, and what opens it.</param>
    /// <param name="text">Text with the key somewhere in it.</param>
    /// <exception cref="EncryptionException">There is no key, it is locked, or it is another one's.</exception>
    public static X509Certificate2 Put(X509Certificate2 bare, CertificatePlace place, string text)
    {
        var file = place.KeyFile ?? place.File;
        var label = Label(text) ?? throw new EncryptionException(Words.Of("encryption.file.no-key", file));
        if (label == Locked && place.Passphrase is null)
        {
            throw CertificateFile.Locked(place, file, new CryptographicException(label));
        }

        using var key = Empty(bare) ?? throw new EncryptionException(Words.Of("encryption.file.kind", place.File));
        try
        {
            if (label == Locked)
            {
                key.ImportFromEncryptedPem(text, place.Passphrase);
            }
            else
            {
                key.ImportFromPem(text);
            }
        }
        catch (CryptographicException wrong) when (label == Locked)
        {
            throw CertificateFile.Locked(place, file, wrong);
        }
        catch (Exception wrong) when (wrong is CryptographicException or ArgumentException)
        {
            throw new EncryptionException(Words.Of("encryption.file.other-key", file, place.File), wrong);
        }

        if (!key.ExportSubjectPublicKeyInfo().AsSpan().SequenceEqual(bare.PublicKey.ExportSubjectPublicKeyInfo()))
        {
            throw new EncryptionException(Words.Of("encryption.file.other-key", file, place.File));
        }

        return key is ECDsa curve ? bare.CopyWithPrivateKey(curve) : bare.CopyWithPrivateKey((RSA)key);
    }

    // Of the kind that the certificate's public key is.
    private static AsymmetricAlgorithm? Empty(X509Certificate2 bare)
    {
        using var curve = bare.GetECDsaPublicKey();
        using var rsa = bare.GetRSAPublicKey();
        return curve is not null ? ECDsa.Create()
            : rsa is not null ? RSA.Create()
            : null;
    }

    private static string? Label(string text)
    {
        var rest = text.AsSpan();
        while (PemEncoding.TryFind(rest, out var found))
        {
            var label = rest[found.Label];
            if (label.EndsWith("PRIVATE KEY", StringComparison.Ordinal))
            {
                return label.ToString();
            }

            rest = rest[found.Location.End..];
        }

        return null;
    }
}
