using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace NightWatch.Pages.Security;

/// <summary>Who is believed about where a request came from.</summary>
internal static class Forwarding
{
    /// <summary>Reads "127.0.0.1, 10.0.0.0/24".</summary>
    /// <returns>Null: an entry is neither an address nor a network.</returns>
    public static IReadOnlyList<IPNetwork>? Parse(string proxies)
    {
        var networks = new List<IPNetwork>();
        foreach (var entry in proxies.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (IPNetwork.TryParse(entry, out var network)) networks.Add(network);
            else if (IPAddress.TryParse(entry, out var address)) networks.Add(new IPNetwork(address, address.GetAddressBytes().Length * 8));
            else return null;
        }

        return networks;
    }

    /// <summary>
    /// Takes address and scheme from the headers of the proxies named, from nobody else's; without proxies, from no header.
    /// </summary>
    public static void UseForwarding(this IApplicationBuilder app, IReadOnlyList<IPNetwork> proxies)
    {
        if (proxies.Count == 0) return;
        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null,
        };
        options.KnownIPNetworks.Clear();
        options.KnownProxies.Clear();
        foreach (var network in proxies) options.KnownIPNetworks.Add(network);
        app.UseForwardedHeaders(options);
    }
}
