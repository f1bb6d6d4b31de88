using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using IPNetwork = System.Net.IPNetwork;

namespace Dripwright.Workbench.Hosting;

/// <summary>How many connections one address may hold open, so that no single machine takes them all.</summary>
/// <remarks>
/// A trusted proxy brings everybody's requests over connections of its own, which say nothing of whose they are. What it brings is counted by
/// the address it names instead, as requests that are open at once; an open page holds one.
/// </remarks>
/// <param name="proxies">The proxies that are believed.</param>
internal sealed class AddressLimit(IReadOnlyList<IPNetwork> proxies)
{
    /// <summary>Connections of all addresses together.</summary>
    public const int MostOfAll = 1000;

    /// <summary>Connections of one address: a class of fifty behind one address holds about three hundred and fifty.</summary>
    public const int Most = 500;

    private readonly AddressCount _connections = new(Most);
    private readonly AddressCount _requests = new(Most);

    /// <summary>Holds a listener to it.</summary>
    public void Hold(ListenOptions listen) =>
        listen.Use(next =>
            async connection =>
            {
                var from = (connection.RemoteEndPoint as IPEndPoint)?.Address;
                if (IsProxy(from))
                {
                    await next(connection).ConfigureAwait(false);
                    return;
                }

                var address = Rates.Shared(from);
                try
                {
                    if (!_connections.Take(address))
                    {
                        connection.Abort(new ConnectionAbortedException("Too many connections of one address."));
                    }

                    if (!connection.ConnectionClosed.IsCancellationRequested)
                    {
                        await next(connection).ConfigureAwait(false);
                    }
                }
                finally
                {
                    _connections.LetGo(address);
                }
            }
        );

    /// <summary>Holds what proxies bring to it. It stands after what reads whom they bring it for.</summary>
    public void Use(IApplicationBuilder app)
    {
        if (proxies.Count > 0)
        {
            app.Use(Pass);
        }
    }

    internal async Task Pass(HttpContext context, RequestDelegate next)
    {
        var address = Rates.AddressOf(context);
        try
        {
            if (_requests.Take(address))
            {
                await next(context).ConfigureAwait(false);
                return;
            }

            context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            context.Response.Headers.RetryAfter = "10";
        }
        finally
        {
            _requests.LetGo(address);
        }
    }

    private bool IsProxy(IPAddress? address)
    {
        if (address is null)
        {
            return false;
        }

        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return proxies.Any(proxy => proxy.Contains(plain));
    }
}
