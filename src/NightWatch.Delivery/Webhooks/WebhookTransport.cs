using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Authentication;
using NightWatch.Delivery.Links;
using NightWatch.Delivery.Mail;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Watchkeeping.Calls;
using NodaTime;

namespace NightWatch.Delivery.Webhooks;

/// <summary>
/// Carries a letter as a signed call. A failure is always the letter's own: one receiver that is away holds nobody else up. The id is the
/// letter's, so a receiver can tell a second try from a second letter, and trying again is always safe.
/// </summary>
internal sealed class WebhookTransport : IMailTransport, IDisposable
{
    private readonly WebhookOptions options;
    private readonly StoredLinkSigner signer;
    private readonly IClock clock;
    private readonly HttpClient client;

    public WebhookTransport(WebhookOptions options, StoredLinkSigner signer, IClock clock)
    {
        (this.options, this.signer, this.clock) = (options, signer, clock);
        var handler = new SocketsHttpHandler
        {
            // Each of them could lead to an address that was not checked.
            AllowAutoRedirect = false,
            UseProxy = false,
            UseCookies = false,
            AutomaticDecompression = DecompressionMethods.None,
            ConnectTimeout = TimeSpan.FromSeconds(options.TimeoutSeconds),
            // The body of the receiver's answer is never read.
            MaxResponseDrainSize = 0,
            MaxResponseHeadersLength = 16,
            ConnectCallback = ConnectAsync,
        };
        client = new HttpClient(handler)
        {
            Timeout = TimeSpan.FromSeconds(options.TimeoutSeconds),
            DefaultRequestVersion = HttpVersion.Version11,
        };
        client.DefaultRequestHeaders.UserAgent.ParseAdd("NightWatch/1");
    }

    /// <inheritdoc/>
    public async Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken)
    {
        if (!options.Enabled) return Failed(FailureClass.Permanent, "Calls are switched off (Webhooks:Enabled).");
        if (WhyNot(letter.Recipient, options.AllowLoopback) is { } why) return Failed(FailureClass.Permanent, why);
        try
        {
            using var request = Request(letter);
            using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellationToken);
            var status = string.Create(CultureInfo.InvariantCulture, $"HTTP {(int)answer.StatusCode}");
            return (int)answer.StatusCode switch
            {
                >= 200 and < 300 => new Handover.Accepted(status),
                410 => Failed(FailureClass.Permanent, $"{status}: the receiver is gone."),
                >= 300 and < 400 => Failed(
                    FailureClass.Permanent, $"{status}: the receiver points elsewhere, which is not followed; name that address itself."),
                _ => Failed(FailureClass.Transient, $"{status} from the receiver."),
            };
        }
        catch (HttpRequestException fault) when (fault.InnerException is ForbiddenAddressException forbidden)
        {
            return Failed(FailureClass.Permanent, forbidden.Message);
        }
        catch (HttpRequestException fault) when (fault.InnerException is AuthenticationException)
        {
            return Failed(FailureClass.Transient, "The receiver's certificate cannot be trusted.");
        }
        catch (Exception fault) when (fault is HttpRequestException or OperationCanceledException or IOException)
        {
            return Failed(
                FailureClass.Transient,
                fault is OperationCanceledException ? "The receiver did not answer in time." : "The receiver cannot be reached.");
        }
    }

    /// <summary>There is no one server to check.</summary>
    public Task<string?> CheckAsync(CancellationToken cancellationToken) => Task.FromResult<string?>(null);

    /// <inheritdoc/>
    public void Dispose() => client.Dispose();

    /// <returns>Why an address is not called, one sentence; null: it may be.</returns>
    internal static string? WhyNot(string url, bool allowLoopback)
    {
        if (!Uri.TryCreate(url, UriKind.Absolute, out var uri) || uri.Scheme is not ("https" or "http") || uri.UserInfo.Length > 0)
            return "The address is no https address without a user name.";
        if (uri.Scheme == "http" && !(allowLoopback && uri.IsLoopback)) return "The address is not https.";
        return null;
    }

    private HttpRequestMessage Request(OutboxLetter letter)
    {
        var body = letter.Mime.ToArray();
        var seconds = clock.GetCurrentInstant().ToUnixTimeSeconds();
        var request = new HttpRequestMessage(HttpMethod.Post, letter.Recipient) { Content = new ByteArrayContent(body) };
        request.Content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
        request.Headers.TryAddWithoutValidation("webhook-id", letter.MessageId);
        request.Headers.TryAddWithoutValidation("webhook-timestamp", seconds.ToString(CultureInfo.InvariantCulture));
        request.Headers.TryAddWithoutValidation(
            "webhook-signature", WebhookSignature.Of(WebhookSignature.SecretOf(signer, letter.Recipient), letter.MessageId, seconds, body));
        return request;
    }

    // The name is looked up once, here, and what was checked is what is called: a name that changes its mind in between gains nothing.
    private async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken cancellationToken)
    {
        var addresses = await Dns.GetHostAddressesAsync(context.DnsEndPoint.Host, cancellationToken);
        var allowed = addresses
            .Where(address => PublicAddress.Is(address) || (options.AllowLoopback && IPAddress.IsLoopback(address)))
            .ToArray();
        if (allowed.Length == 0) throw new ForbiddenAddressException();
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(allowed, context.DnsEndPoint.Port, cancellationToken);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    // The address itself is as good as a password at many receivers, so no text names it.
    private static Handover.Failed Failed(FailureClass @class, string text) => new(@class, new ServerReply(null, null, text));

    private sealed class ForbiddenAddressException() : IOException("The address does not lead to the public internet, and is not called.");
}
