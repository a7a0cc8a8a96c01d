using System.Net;

namespace NightWatch.Pages.Security;

/// <summary>Who may read the metrics: this machine, and the addresses and networks that the operator names.</summary>
internal sealed class MetricsReaders(string setting)
{
    private readonly IPNetwork[] networks = [.. Parts(setting).Select(part => NetworkOf(part)!.Value)];

    /// <returns>The first part of the setting that is no address and no network; null: all of them are.</returns>
    public static string? Fault(string setting) => Parts(setting).FirstOrDefault(part => NetworkOf(part) is null);

    /// <summary>Whether a request may be answered. One that came through a proxy may not, whoever sent it.</summary>
    public bool May(HttpContext http)
    {
        if (RequestOrigin.IsForwarded(http)) return false;
        if (http.Connection.RemoteIpAddress is not { } address) return false;
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        return IPAddress.IsLoopback(address) || networks.Any(network => network.Contains(address));
    }

    private static string[] Parts(string setting) =>
        setting.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static IPNetwork? NetworkOf(string part)
    {
        if (IPNetwork.TryParse(part, out var network)) return network;
        return IPAddress.TryParse(part, out var address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8) : null;
    }
}
