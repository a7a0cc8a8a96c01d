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
/// Lets the operator in: by the key, as password of Basic authentication (RFC 7617, any user name) or as bearer token (RFC 6750). Without a key
/// only from this machine, and only while the pages are for this machine: behind a proxy every request comes from the proxy's machine.
/// </summary>
internal sealed class OperatorGate(PageOptions options, PageRoot root, RationStore rations, StoredLinkSigner signer, IClock clock) : IEndpointFilter
{
    private static readonly Ration[] WrongKeys = [new(Duration.FromHours(1), 20)];

    private readonly byte[]? key = options.OperatorKeyFile.Length > 0 ? SHA256.HashData(Encoding.UTF8.GetBytes(SecretFile.Read(options.OperatorKeyFile))) : null;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        if (key is null) return root.Base is null && IsHere(http) ? await next(context) : PageResult.NothingHere();
        if (GivenKey(http) is not { } given) return Ask(http);
        if (CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), key)) return await next(context);
        return await rations.TakeAsync(signer.Sign("operator", MailRations.NetworkOf(http.Connection.RemoteIpAddress)), WrongKeys, clock.GetCurrentInstant(), http.RequestAborted)
            ? Ask(http)
            : PageResult.Says("Too many wrong keys", StatusCodes.Status429TooManyRequests, "Try again in an hour.");
    }

    /// <summary>From this machine, not through a proxy, and asked for under a name of this machine (not one that a foreign page made point here).</summary>
    public static bool IsHere(HttpContext http) =>
        RequestOrigin.IsThisMachine(http)
        && (http.Request.Host.Host is "localhost" || (IPAddress.TryParse(http.Request.Host.Host.Trim('[', ']'), out var host) && IPAddress.IsLoopback(host)));

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
