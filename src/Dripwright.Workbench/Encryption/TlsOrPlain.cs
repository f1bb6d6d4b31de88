using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Dripwright.Workbench.Encryption;

/// <summary>
/// Encrypted connections on the port that was plain before, so that old bookmarks do not end in an empty page: one that begins without
/// encryption is served without, and <see cref="EncryptedOnly"/> leads it to the encrypted address.
/// </summary>
internal static class TlsOrPlain
{
    // The first byte of every TLS connection: a record of kind "handshake" (RFC 8446, section 5.1).
    private const byte Handshake = 0x16;

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(15);

    public static void Listen(ListenOptions listen, ServedCertificate served)
    {
        if (served.Now is null)
        {
            return;
        }

        ConnectionDelegate? plain = null;
        listen.Use(encrypted =>
            async connection =>
            {
                if (await BeginsEncrypted(connection).ConfigureAwait(false) is { } isEncrypted)
                {
                    await (isEncrypted ? encrypted : plain!)(connection).ConfigureAwait(false);
                }
            }
        );
        listen.UseHttps(new TlsHandshakeCallbackOptions { OnConnection = _ => served.Show() });
        // What comes after the encryption; it is built before the first above it is.
        listen.Use(next => plain = next);
    }

    private static async Task<bool?> BeginsEncrypted(ConnectionContext connection)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(connection.ConnectionClosed);
        patience.CancelAfter(s_patience);
        try
        {
            var read = await connection.Transport.Input.ReadAsync(patience.Token).ConfigureAwait(false);
            var start = read.Buffer.Start;
            bool? begins = read.Buffer.IsEmpty ? null : read.Buffer.FirstSpan[0] == Handshake;
            // Nothing is taken: whoever serves the connection reads it from its beginning.
            connection.Transport.Input.AdvanceTo(start, start);
            return begins;
        }
        catch (Exception gone)
            when (gone is OperationCanceledException or ConnectionResetException or ConnectionAbortedException)
        {
            return null;
        }
    }
}
