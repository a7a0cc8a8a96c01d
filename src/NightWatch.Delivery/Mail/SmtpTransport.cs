using System.Net.Sockets;
using MailKit.Net.Smtp;
using MimeKit;
using NightWatch.Store.Outbox;
using Polly;
using Polly.Retry;

namespace NightWatch.Delivery.Mail;

/// <summary>Sends over SMTP, one recipient a letter, over one connection that is kept while it serves.</summary>
internal sealed class SmtpTransport : IMailTransport, IAsyncDisposable
{
    private readonly MailOptions options;
    private readonly TimeProvider time;
    private readonly DkimStamp? dkim;
    private readonly ResiliencePipeline<SmtpLink> connect;
    private readonly SemaphoreSlim oneAtATime = new(1);
    private SmtpLink? link;

    public SmtpTransport(MailOptions options, TimeProvider time)
    {
        this.options = options;
        this.time = time;
        dkim = options.Dkim.IsSet ? new DkimStamp(options.Dkim) : null;
        // Only the connection is retried. A retried sending would send twice what the server took without saying so.
        connect = new ResiliencePipelineBuilder<SmtpLink> { TimeProvider = time }
            .AddTimeout(TimeSpan.FromSeconds(options.ConnectTimeoutSeconds))
            .AddRetry(
                new RetryStrategyOptions<SmtpLink>
                {
                    MaxRetryAttempts = 2,
                    Delay = TimeSpan.FromSeconds(1),
                    BackoffType = DelayBackoffType.Exponential,
                    ShouldHandle = new PredicateBuilder<SmtpLink>()
                        .Handle<SocketException>()
                        .Handle<IOException>()
                        .Handle<SmtpProtocolException>(),
                })
            .Build();
    }

    public async Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken)
    {
        MimeMessage message;
        MailboxAddress recipient;
        try
        {
            message = await MimeMessage.LoadAsync(new MemoryStream(letter.Mime.ToArray()), CancellationToken.None);
            recipient = MailboxAddress.Parse(letter.Recipient);
            dkim?.Sign(message);
        }
        catch (Exception fault) when (fault is FormatException or ParseException or ArgumentException)
        {
            return new Handover.Failed(
                FailureClass.Permanent, new(null, null, Redaction.Of($"The stored letter cannot be read: {fault.Message}")));
        }

        await oneAtATime.WaitAsync(CancellationToken.None);
        try
        {
            return await SendAsync(letter, message, recipient, cancellationToken);
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    public async Task<string?> CheckAsync(CancellationToken cancellationToken)
    {
        try
        {
            var open = await connect.ExecuteAsync(async token => await SmtpLink.OpenAsync(options, time, token), cancellationToken);
            await open.CloseAsync(cancellationToken);
            return null;
        }
        catch (Exception fault) when (!cancellationToken.IsCancellationRequested)
        {
            return Where(SmtpFailures.Of(Unwrap(fault), SmtpPhase.Connecting)).Reply.Text;
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (link is not null) await link.CloseAsync(new CancellationTokenSource(TimeSpan.FromSeconds(2), time).Token);
        oneAtATime.Dispose();
    }

    private static Exception Unwrap(Exception fault) =>
        fault is Polly.Timeout.TimeoutRejectedException ? new TimeoutException("no answer") : fault;

    private async Task<Handover> SendAsync(
        OutboxLetter letter, MimeMessage message, MailboxAddress recipient, CancellationToken cancellationToken)
    {
        if (options.PasswordFile.Length > 0 && SecretFile.Fault(options.PasswordFile, "Mail:PasswordFile") is { } unreadable)
            return new Handover.Failed(FailureClass.Configuration, new(null, null, unreadable));

        try
        {
            link = await ReadyLinkAsync(cancellationToken);
        }
        catch (Exception fault)
        {
            return Where(SmtpFailures.Of(Unwrap(fault), SmtpPhase.Connecting));
        }

        // MailKit announces the size but does not compare it.
        if (link.MaxSize < letter.Mime.Length)
            return new Handover.Failed(
                FailureClass.Permanent,
                new(552, "5.3.4", $"The letter has {letter.Mime.Length} bytes, the mail server takes {link.MaxSize}."));

        using var watchdog = new SmtpWatchdog(options, time, cancellationToken);
        try
        {
            var answer = await link.SendAsync(message, options.ReadFrom(), recipient, watchdog);
            return new Handover.Accepted(Redaction.Of(answer));
        }
        catch (Exception fault)
        {
            var failure = SmtpFailures.Of(fault, link.Phase);
            if (fault is not SmtpCommandException || !link.IsConnected)
            {
                link.Dispose();
                link = null;
            }

            return failure;
        }
    }

    private async Task<SmtpLink> ReadyLinkAsync(CancellationToken cancellationToken)
    {
        if (link is { } open)
        {
            if (await open.IsUsableAsync(cancellationToken)) return open;
            link = null;
            await open.CloseAsync(cancellationToken);
        }

        return await connect.ExecuteAsync(async token => await SmtpLink.OpenAsync(options, time, token), cancellationToken);
    }

    private Handover.Failed Where(Handover.Failed failure) =>
        failure with
        {
            Reply = failure.Reply with
            {
                Text = $"{failure.Reply.Text.TrimEnd('.')} (Mail:Host {options.Host}, Mail:Port {options.Port}).",
            },
        };
}
