using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Dripwright.Workbench.Hosting;

/// <summary>How many connections one address may hold open, so that no single machine takes them all.</summary>
internal sealed class AddressLimit
{
    /// <summary>Connections of all addresses together.</summary>
    public const int MostOfAll = 1000;

    /// <summary>Connections of one address: a class of fifty behind one address holds about three hundred and fifty.</summary>
    public const int Most = 500;

    private readonly ConcurrentDictionary<string, int> _open = new(StringComparer.Ordinal);

    /// <summary>Holds a listener to it.</summary>
    public void Hold(ListenOptions listen) =>
        listen.Use(next =>
            async connection =>
            {
                var address = Rates.Shared((connection.RemoteEndPoint as IPEndPoint)?.Address);
                if (_open.AddOrUpdate(address, 1, (_, count) => count + 1) > Most)
                {
                    connection.Abort(new ConnectionAbortedException("Too many connections of one address."));
                }

                try
                {
                    if (!connection.ConnectionClosed.IsCancellationRequested)
                    {
                        await next(connection).ConfigureAwait(false);
                    }
                }
                finally
                {
                    if (_open.AddOrUpdate(address, 0, (_, count) => count - 1) <= 0)
                    {
                        // Only where it is still none: another may have come meanwhile.
                        _open.TryRemove(new KeyValuePair<string, int>(address, 0));
                    }
                }
            }
        );
}
