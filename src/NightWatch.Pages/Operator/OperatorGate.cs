using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using NightWatch.Delivery.Links;
using NightWatch.Delivery.Mail;
using NightWatch.Pages.Address;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Pages.Subscribers;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Pages.Operator;

/// <summary>
/// Lets the operator in: by the key, as password of Basic authentication (RFC 7617, any user name) or as bearer token (RFC 6750). Without a
/// key only from this machine, and only while the pages are for this machine: behind a proxy every request comes from the proxy's machine.
/// </summary>
internal sealed class OperatorGate(PageOptions options, PageRoot root, RationStore rations, StoredLinkSigner signer, IClock clock)
    : IEndpointFilter,
        IDisposable
{
    private static readonly Ration WrongKeys = new(Duration.FromHours(1), 20);

    private readonly byte[]? key =
        options.OperatorKeyFile.Length > 0 ? SHA256.HashData(Encoding.UTF8.GetBytes(SecretFile.Read(options.OperatorKeyFile))) : null;

    // One key at a time, so that no more are compared than the ration allows, however many come at once.
    private readonly SemaphoreSlim one = new(1);

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        if (key is null) return root.Base is null && IsHere(http) ? await next(context) : PageResult.NothingHere();
        if (GivenKey(http) is not { } given) return Ask(http);
        return await IsRightAsync(given, key, http) switch
        {
            true => await next(context),
            false => Ask(http),
            null => PageResult.Says("Too many wrong keys", StatusCodes.Status429TooManyRequests, "Try again in an hour."),
        };
    }

    public void Dispose() => one.Dispose();

    // Null: this network's wrong keys are used up, and the key is not compared.
    private async Task<bool?> IsRightAsync(string given, byte[] key, HttpContext http)
    {
        var (network, now, stop) = (
            signer.Sign("operator", MailRations.NetworkOf(http.Connection.RemoteIpAddress)),
            clock.GetCurrentInstant(),
            http.RequestAborted);
        await one.WaitAsync(stop);
        try
        {
            if (await rations.CountAsync(network, now - WrongKeys.Within, now, stop) >= WrongKeys.Most) return null;
            if (CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), key)) return true;
            return await rations.TakeAsync(network, [WrongKeys], now, stop) ? false : null;
        }
        finally
        {
            one.Release();
        }
    }

    /// <summary>
    /// From this machine, not through a proxy, and asked for under a name of this machine (not one that a foreign page made point here).
    /// </summary>
    public static bool IsHere(HttpContext http) =>
        RequestOrigin.IsThisMachine(http)
        && (
            http.Request.Host.Host is "localhost"
            || (IPAddress.TryParse(http.Request.Host.Host.Trim('[', ']'), out var host) && IPAddress.IsLoopback(host)));

    private static IResult Ask(HttpContext http)
    {
        http.Response.Headers.WWWAuthenticate = "Basic realm=\"NightWatch operator\", charset=\"UTF-8\"";
        return PageResult.Says("For the operator", StatusCodes.Status401Unauthorized, "This page needs the operator's key.");
    }

    private static string? GivenKey(HttpContext http)
    {
        if (!AuthenticationHeaderValue.TryParse(http.Request.Headers.Authorization, out var given) || given.Parameter is null) return null;
        if (given.Scheme.Equals("Bearer", StringComparison.OrdinalIgnoreCase)) return given.Parameter;
        if (!given.Scheme.Equals("Basic", StringComparison.OrdinalIgnoreCase)) return null;
        var bytes = new byte[given.Parameter.Length];
        if (!Convert.TryFromBase64String(given.Parameter, bytes, out var length)) return null;
        var pair = Encoding.UTF8.GetString(bytes, 0, length);
        var colon = pair.IndexOf(':', StringComparison.Ordinal);
        return colon < 0 ? null : pair[(colon + 1)..];
    }
}
