using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Language;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Encryption;

/// <summary>The certificate that a garden made for itself, with its authority, in the data folder.</summary>
/// <remarks>
/// Three files: <c>authority.crt</c>, which people trust and everybody may have; <c>server.pem</c>, certificate and key of the server; and
/// <c>signing.pem</c>, what signs the next one, unless it was discarded. The last two are for their owner only.
/// </remarks>
/// <param name="dataFolder">The data folder.</param>
/// <param name="time">The clock; the system's where null.</param>
public sealed class OwnCertificate(string dataFolder, TimeProvider? time = null)
{
    /// <summary>How long before its end the server's certificate is renewed.</summary>
    public static readonly TimeSpan Ahead = TimeSpan.FromDays(45);

    private const string FolderName = "certificate";
    private const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private readonly TimeProvider _time = time ?? TimeProvider.System;

    private string Folder { get; } = Path.Combine(dataFolder, FolderName);

    /// <summary>The authority's certificate, for the phones; no key is in it.</summary>
    public string AuthorityFile => Path.Combine(Folder, "authority.crt");

    /// <summary>Where the server's certificate lies.</summary>
    public CertificatePlace Place => new(Path.Combine(Folder, "server.pem"), IsOwn: true);

    /// <summary>Whether there is one.</summary>
    public bool Exists => File.Exists(Place.File) && File.Exists(AuthorityFile);

    /// <summary>Whether what signs the next one is still there.</summary>
    public bool CanRenew => File.Exists(SigningFile);

    private string SigningFile => Path.Combine(Folder, "signing.pem");

    /// <summary>Names that are usual for this machine in a house.</summary>
    public static IReadOnlyList<string> UsualNames() =>
        HostName.OfMachine(Environment.MachineName) is { } name ? [name] : [];

    /// <summary>Addresses by which the house reaches this machine now.</summary>
    public static IReadOnlyList<IPAddress> UsualAddresses() => PrivateNetwork.OfMachine();

    /// <summary>What there is to tell; null where there is no certificate.</summary>
    /// <exception cref="EncryptionException">It cannot be read.</exception>
    public OwnCertificateTold? Tell()
    {
        using var root = Root();
        if (!Exists || root is null)
        {
            return null;
        }

        var server = CertificateFile.Read(Place);
        var concerns = Concern.Of(server, this, [], UsualAddresses(), _time.GetUtcNow().UtcDateTime);
        return new OwnCertificateTold(
            server.Names,
            server.Addresses,
            server.Until,
            root.NotAfter.ToUniversalTime(),
            Fingerprint(root),
            [.. concerns.Select(one => one.Text)]
        );
    }

    /// <summary>Makes an authority and a certificate for these names and addresses. Whoever trusted an older authority must trust this one.</summary>
    /// <param name="names">Names of this machine.</param>
    /// <param name="addresses">Addresses of it.</param>
    /// <param name="isKeyDiscarded">Whether nothing more can be signed after this.</param>
    /// <exception cref="EncryptionException">A name or an address is not permitted, or nothing can be written.</exception>
    public void Make(IEnumerable<string> names, IEnumerable<IPAddress> addresses, bool isKeyDiscarded)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(addresses);
        string[] all = [.. names.Select(HostName.Read).Append(HostName.Own).Distinct()];
        var at = Permitted(addresses);
        var now = _time.GetUtcNow();
        using var root = Authority.Root(all, now);
        using var signing = Authority.Signing(root, all);
        using var server = Authority.Server(signing, all, at, now);
        Write(() =>
        {
            // What could sign for the older authority goes first: none of it is left, wherever this is broken off.
            File.Delete(SigningFile);
            File.Delete(Place.File);
            Put(AuthorityFile, root.ExportCertificatePem(), null);
            if (!isKeyDiscarded)
            {
                Put(SigningFile, WithKey(signing), Owner);
            }

            Put(Place.File, WithKey(server) + "\n" + signing.ExportCertificatePem(), Owner);
        });
    }

    /// <summary>Signs a new certificate by the same authority, so that nobody must trust anything anew.</summary>
    /// <param name="names">Names to add to those it has.</param>
    /// <param name="addresses">Addresses in the place of those it has; null leaves them.</param>
    /// <exception cref="EncryptionException">There is nothing to sign with, or a name or an address is not permitted.</exception>
    public void Renew(IEnumerable<string>? names = null, IEnumerable<IPAddress>? addresses = null)
    {
        if (!CanRenew)
        {
            throw new EncryptionException(Words.Of(Exists ? "encryption.own.discarded" : "encryption.own.none"));
        }

        using var signing = Signing();
        var now = _time.GetUtcNow();
        if (signing.NotAfter.ToUniversalTime() < now.UtcDateTime + Ahead)
        {
            throw new EncryptionException(Words.Of("encryption.own.old", Day(signing.NotAfter)));
        }

        var permitted = NameConstraints.Names(signing);
        var old = Old();
        string[] all = [.. (old?.Names ?? permitted).Concat((names ?? []).Select(HostName.Read)).Distinct()];
        if (all.FirstOrDefault(name => !HostName.IsWithin(name, permitted)) is { } foreign)
        {
            throw new EncryptionException(Words.Of("encryption.own.foreign", foreign, string.Join(", ", permitted)));
        }

        using var server = Authority.Server(
            signing,
            all,
            Permitted(addresses ?? old?.Addresses ?? UsualAddresses()),
            now
        );
        Write(() => Put(Place.File, WithKey(server) + "\n" + signing.ExportCertificatePem(), Owner));
    }

    /// <summary>The authority's certificate; null where there is none that can be read.</summary>
    public X509Certificate2? Root()
    {
        try
        {
            return File.Exists(AuthorityFile) ? X509Certificate2.CreateFromPem(File.ReadAllText(AuthorityFile)) : null;
        }
        catch (Exception wrong) when (wrong is CryptographicException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>What tells an authority from every other, as phones show it (SHA-256).</summary>
    public static string Fingerprint(X509Certificate2 authority)
    {
        ArgumentNullException.ThrowIfNull(authority);
        return string.Join(
            ':',
            SHA256.HashData(authority.RawData).Select(one => one.ToString("X2", CultureInfo.InvariantCulture))
        );
    }

    // One that is damaged is made anew all the same.
    private ServerCertificate? Old()
    {
        try
        {
            return CertificateFile.Read(Place);
        }
        catch (EncryptionException)
        {
            return null;
        }
    }

    private X509Certificate2 Signing()
    {
        try
        {
            var text = File.ReadAllText(SigningFile);
            return X509Certificate2.CreateFromPem(text, text);
        }
        catch (Exception wrong)
            when (wrong is CryptographicException or ArgumentException or IOException or UnauthorizedAccessException)
        {
            throw new EncryptionException(Words.Of("encryption.file.unread", SigningFile), wrong);
        }
    }

    private static IPAddress[] Permitted(IEnumerable<IPAddress> addresses)
    {
        IPAddress[] all = [.. addresses.Append(IPAddress.Loopback).Append(IPAddress.IPv6Loopback).Distinct()];
        return all.FirstOrDefault(one => !PrivateNetwork.Holds(one)) is { } foreign
            ? throw new EncryptionException(Words.Of("encryption.address.refused", foreign))
            : all;
    }

    private static string WithKey(X509Certificate2 certificate)
    {
        using var key = certificate.GetECDsaPrivateKey()!;
        return certificate.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem();
    }

    private void Write(Action work)
    {
        try
        {
            if (OperatingSystem.IsWindows())
            {
                // The data folder lies in the owner's profile, which the system keeps from other people.
                Directory.CreateDirectory(Folder);
            }
            else
            {
                Directory.CreateDirectory(Folder, Owner | UnixFileMode.UserExecute);
            }

            work();
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            throw new EncryptionException(Words.Of("encryption.own.unwritten", Folder, SystemReason.Of(wrong)), wrong);
        }
    }

    // Whole or not at all, and never for a moment readable by others.
    private static void Put(string path, string text, UnixFileMode? mode)
    {
        var draft = path + ".draft";
        File.Delete(draft);
        var how = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (mode is not null && !OperatingSystem.IsWindows())
        {
            how.UnixCreateMode = mode;
        }

        using (var to = new StreamWriter(draft, how))
        {
            to.Write(text + "\n");
            to.Flush();
            ((FileStream)to.BaseStream).Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }

    private static string Day(DateTime at) => at.ToUniversalTime().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>What there is to tell of a certificate of the garden's own.</summary>
/// <param name="Names">Names it is for.</param>
/// <param name="Addresses">Addresses it is for.</param>
/// <param name="Until">Until when it holds, UTC.</param>
/// <param name="AuthorityUntil">Until when the authority holds, UTC.</param>
/// <param name="Fingerprint">What tells the authority from every other (SHA-256).</param>
/// <param name="Concerns">What its owner must hear, one sentence each.</param>
public sealed record OwnCertificateTold(
    IReadOnlyList<string> Names,
    IReadOnlyList<IPAddress> Addresses,
    DateTime Until,
    DateTime AuthorityUntil,
    string Fingerprint,
    IReadOnlyList<string> Concerns
);
