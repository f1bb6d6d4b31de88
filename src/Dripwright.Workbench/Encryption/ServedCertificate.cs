using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Setup;

namespace Dripwright.Workbench.Encryption;

/// <summary>The certificate that the workbench shows now. When its file is renewed the next connection gets the new one.</summary>
internal sealed class ServedCertificate
{
    private readonly WorkbenchOptions _options;
    private readonly TimeProvider _time;
    private readonly Lock _turn = new();
    private volatile ServerCertificate? _now;
    private volatile string? _unread;
    private byte[] _read = [];
    private byte[] _faulty = [];

    /// <exception cref="EncryptionException">There is a place for it, and what lies there cannot be used.</exception>
    public ServedCertificate(WorkbenchOptions options)
    {
        _options = options;
        _time = options.Time ?? TimeProvider.System;
        if (options.Certificate is { } place)
        {
            Own = place.IsOwn ? new OwnCertificate(options.DataFolder, options.Time) : null;
            var bytes = CertificateFile.Bytes(place);
            _now = CertificateFile.Of(place, bytes);
            _read = Mark(bytes);
        }
    }

    /// <summary>The garden's own, where it is that one; else null.</summary>
    public OwnCertificate? Own { get; }

    /// <summary>The certificate; null where the workbench does not encrypt.</summary>
    public ServerCertificate? Now => _now;

    /// <summary>What its owner must hear.</summary>
    public IReadOnlyList<Concern> Concerns =>
        _now is not { } now
            ? []
            :
            [
                .. Concern.Of(now, Own, _options.KnownAs, _options.Addresses(), _time.GetUtcNow().UtcDateTime),
                .. _unread is { } why
                    ? [new Concern("encryption.concern.unread", [why], false)]
                    : Array.Empty<Concern>(),
            ];

    /// <summary>Looks whether the file changed. A new one that cannot be used changes nothing, and is told.</summary>
    /// <returns>What is wrong with a new file, the first time that it is seen; else null.</returns>
    public string? Reload()
    {
        if (_options.Certificate is not { } place)
        {
            return null;
        }

        lock (_turn)
        {
            var mark = Array.Empty<byte>();
            try
            {
                var bytes = CertificateFile.Bytes(place);
                mark = Mark(bytes);
                if (!mark.AsSpan().SequenceEqual(_read))
                {
                    _now = CertificateFile.Of(place, bytes);
                    _read = mark;
                }

                (_unread, _faulty) = (null, []);
                return null;
            }
            catch (EncryptionException why)
            {
                var isNew = _unread is null || !mark.AsSpan().SequenceEqual(_faulty);
                (_unread, _faulty) = (why.Message, mark);
                return isNew ? why.Message : null;
            }
        }
    }

    /// <summary>What a new connection is to be shown.</summary>
    public ValueTask<SslServerAuthenticationOptions> Show() =>
        new(
            new SslServerAuthenticationOptions
            {
                ServerCertificateContext = _now!.Context,
                // The parties agree on the newest version that both know.
                EnabledSslProtocols = System.Security.Authentication.SslProtocols.None,
                CertificateRevocationCheckMode = X509RevocationMode.NoCheck,
            }
        );

    private static byte[] Mark(IEnumerable<byte[]> bytes) => [.. bytes.SelectMany(SHA256.HashData)];
}
