using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Dripwright.Workbench.Setup;

/// <summary>Addresses that are used only inside a house, and those of this machine.</summary>
internal static class PrivateNetwork
{
    /// <summary>
    /// Private IPv4 (RFC 1918), unique local IPv6 (RFC 4193), link-local IPv6 (RFC 4291), and the machine itself. No address outside of
    /// them can be had by a certificate of the garden's own.
    /// </summary>
    public static IReadOnlyList<IPNetwork> Ranges { get; } =
    [
        IPNetwork.Parse("10.0.0.0/8"),
        IPNetwork.Parse("172.16.0.0/12"),
        IPNetwork.Parse("192.168.0.0/16"),
        IPNetwork.Parse("127.0.0.0/8"),
        IPNetwork.Parse("fc00::/7"),
        IPNetwork.Parse("fe80::/10"),
        IPNetwork.Parse("::1/128"),
    ];

    /// <summary>Whether an address is used only inside a house.</summary>
    public static bool Holds(IPAddress address) => Ranges.Any(range => range.Contains(address));

    /// <summary>
    /// The private IPv4 addresses by which the house reaches this machine now: those of connections with a way out. Networks that only
    /// programs of this machine use have none. IPv6 addresses nobody types, and they change by themselves.
    /// </summary>
    public static IReadOnlyList<IPAddress> OfMachine()
    {
        // A container has addresses of its own, which the house does not see. Images of the platform say so by this variable.
        if (Environment.GetEnvironmentVariable("DOTNET_RUNNING_IN_CONTAINER") is "true" or "1")
        {
            return [];
        }

        try
        {
            return
            [
                .. NetworkInterface
                    .GetAllNetworkInterfaces()
                    .Where(one =>
                        one.OperationalStatus == OperationalStatus.Up
                        && one.NetworkInterfaceType
                            is not (NetworkInterfaceType.Loopback or NetworkInterfaceType.Tunnel)
                    )
                    .Select(one => one.GetIPProperties())
                    .Where(one => one.GatewayAddresses.Count > 0)
                    .SelectMany(one => one.UnicastAddresses.Select(unicast => unicast.Address))
                    .Where(address => address.AddressFamily == AddressFamily.InterNetwork && Holds(address))
                    .Distinct(),
            ];
        }
        catch (Exception why) when (why is NetworkInformationException or PlatformNotSupportedException)
        {
            // A system that does not tell: then nothing can be said of its addresses.
            return [];
        }
    }
}
