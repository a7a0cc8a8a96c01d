using System.Net;

namespace NightWatch.Pages.Security;

/// <summary>Where a request comes from, as far as it can be known.</summary>
internal static class RequestOrigin
{
    // What proxies add, and what is left of it once the headers of a trusted one have been taken for true.
    private static readonly string[] Forwarders =
    ["X-Forwarded-For", "X-Forwarded-Host", "X-Original-For", "X-Real-IP", "Forwarded", "Via"];

    /// <summary>It came through a proxy, which says so: a proxy on this machine looks like this machine.</summary>
    public static bool IsForwarded(HttpContext http) => Forwarders.Any(http.Request.Headers.ContainsKey);

    /// <summary>From this machine, and not through a proxy.</summary>
    public static bool IsThisMachine(HttpContext http) =>
        http.Connection.RemoteIpAddress is { } remote && IPAddress.IsLoopback(remote) && !IsForwarded(http);
}
