using System.Net;
using System.Net.Sockets;

namespace NightWatch.Delivery.Webhooks;

/// <summary>
/// Tells an address of the public internet from one that leads into somebody's own network: a subscriber's address must not make this
/// machine call where only it can. After the IANA special-purpose address registries (RFC 6890 and its updates).
/// </summary>
internal static class PublicAddress
{
    private static readonly IPNetwork[] NotPublic =
    [
        .. (
            (string[])
                [
                    "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24",
                    "192.0.2.0/24", "192.88.99.0/24", "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24",
                    "224.0.0.0/4", "240.0.0.0/4", "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20",
                ]).Select(IPNetwork.Parse),
    ];

    // Everything else of IPv6 is loopback, local, multicast, translated or not given out.
    private static readonly IPNetwork GlobalUnicast = IPNetwork.Parse("2000::/3");

    /// <summary>The address can be called.</summary>
    public static bool Is(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        if (address.AddressFamily == AddressFamily.InterNetworkV6 && !GlobalUnicast.Contains(address)) return false;
        return !NotPublic.Any(network => network.BaseAddress.AddressFamily == address.AddressFamily && network.Contains(address));
    }
}
