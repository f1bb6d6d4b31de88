using System.Net;
using Dripwright.Language;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace Dripwright.Workbench.Encryption;

/// <summary>Programs before the workbench that encrypt for it. What they say of a request is believed; what others say so is passed over.</summary>
public static class TrustedProxies
{
    /// <summary>Reads addresses and ranges.</summary>
    /// <param name="texts">Each an address such as 192.168.1.4, or a range such as 10.0.0.0/24.</param>
    /// <exception cref="EncryptionException">One is neither, or is everybody.</exception>
    public static IReadOnlyList<IPNetwork> Read(IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return [.. texts.Select(Read)];
    }

    internal static void Use(IApplicationBuilder app, IReadOnlyList<IPNetwork> proxies)
    {
        if (proxies.Count == 0)
        {
            return;
        }

        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders =
                ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost,
            // As many as are named may stand one before the other; the first that is not ends it.
            ForwardLimit = null,
        };
        // The platform believes this machine unasked.
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (var proxy in proxies)
        {
            options.KnownIPNetworks.Add(proxy);
        }

        app.UseForwardedHeaders(options);
    }

    private static IPNetwork Read(string text)
    {
        if (IPAddress.TryParse(text, out var one))
        {
            one = one.IsIPv4MappedToIPv6 ? one.MapToIPv4() : one;
            return new IPNetwork(one, one.GetAddressBytes().Length * 8);
        }

        return IPNetwork.TryParse(text, out var range) && range.PrefixLength > 0
            ? range
            : throw new EncryptionException(Words.Of("encryption.proxy.refused", text));
    }
}
