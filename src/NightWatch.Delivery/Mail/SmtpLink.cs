using MailKit.Net.Smtp;
using MimeKit;

namespace NightWatch.Delivery.Mail;

/// <summary>One open connection to the mail server, used for many letters.</summary>
internal sealed class SmtpLink : IDisposable
{
    private const int MostLetters = 100;
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan IdleBeforeCheck = TimeSpan.FromSeconds(30);

    private readonly SmtpClient client;
    private readonly SmtpConversation conversation = new();
    private readonly TimeProvider time;
    private readonly long opened;
    private long lastUsed;
    private int letters;

    private SmtpLink(MailOptions options, TimeProvider time)
    {
        this.time = time;
        opened = lastUsed = time.GetTimestamp();
        client = new SmtpClient(conversation)
        {
            // Our watchdog times the conversation; MailKit's own two minutes would cut the wait after the text short.
            Timeout = (int)TimeSpan.FromSeconds(options.AcceptTimeoutSeconds + options.ReplyTimeoutSeconds).TotalMilliseconds,
        };
        if (options.CaFile.Length > 0) client.ServerCertificateValidationCallback = PrivateAuthority.Read(options.CaFile).Accepts;
    }

    public SmtpPhase Phase => conversation.Phase;

    /// <summary>Bytes the server takes in one letter; null: it does not say.</summary>
    public long? MaxSize => client.Capabilities.HasFlag(SmtpCapabilities.Size) && client.MaxSize > 0 ? client.MaxSize : null;

    public bool IsConnected => client.IsConnected;

    /// <summary>Connects, secures and authenticates; on failure nothing stays open.</summary>
    public static async Task<SmtpLink> OpenAsync(MailOptions options, TimeProvider time, CancellationToken cancellationToken)
    {
        var link = new SmtpLink(options, time);
        try
        {
            await link.client.ConnectAsync(options.Host, options.Port, MailSecurity.Of(options.Security), cancellationToken);
            if (options.UserName.Length > 0)
                await link.client.AuthenticateAsync(options.UserName, SecretFile.Read(options.PasswordFile), cancellationToken);
            // Only DATA is used, not BDAT, so that there is one way of handing the text over to watch.
            link.client.Capabilities &= ~SmtpCapabilities.Chunking;
            return link;
        }
        catch
        {
            link.Dispose();
            throw;
        }
    }

    /// <summary>Whether the next letter may go this way. A server may have hung up on an idle connection, so that is asked first.</summary>
    public async Task<bool> IsUsableAsync(CancellationToken cancellationToken)
    {
        if (!client.IsConnected || letters >= MostLetters || time.GetElapsedTime(opened) > Longest) return false;
        if (time.GetElapsedTime(lastUsed) < IdleBeforeCheck) return true;
        try
        {
            await client.NoOpAsync(cancellationToken);
            return true;
        }
        catch (Exception) when (!cancellationToken.IsCancellationRequested)
        {
            return false;
        }
    }

    /// <returns>The server's text of acceptance.</returns>
    public async Task<string> SendAsync(MimeMessage message, MailboxAddress sender, MailboxAddress recipient, SmtpWatchdog watchdog)
    {
        letters++;
        conversation.Begin();
        conversation.Alive = watchdog.Heard;
        try
        {
            return await client.SendAsync(message, sender, [recipient], watchdog.Token);
        }
        finally
        {
            conversation.Alive = _ => { };
            lastUsed = time.GetTimestamp();
        }
    }

    /// <summary>Says goodbye; whether the server answers does not matter any more.</summary>
    public async Task CloseAsync(CancellationToken cancellationToken)
    {
        try
        {
            if (client.IsConnected) await client.DisconnectAsync(true, cancellationToken);
        }
        catch (Exception fault)
            when (fault is IOException or SmtpProtocolException or SmtpCommandException or TimeoutException or OperationCanceledException)
        { }

        Dispose();
    }

    public void Dispose() => client.Dispose();
}
