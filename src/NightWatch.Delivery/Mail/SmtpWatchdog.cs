namespace NightWatch.Delivery.Mail;

/// <summary>
/// Ends a conversation in which the server falls silent. A short patience for each reply, the standard's long one once the text
/// is out: giving up there too early makes duplicates.
/// </summary>
internal sealed class SmtpWatchdog : IDisposable
{
    private readonly TimeSpan reply;
    private readonly TimeSpan accept;
    private readonly CancellationTokenSource silence;
    private readonly CancellationTokenSource either;

    public SmtpWatchdog(MailOptions options, TimeProvider time, CancellationToken stop)
    {
        reply = TimeSpan.FromSeconds(options.ReplyTimeoutSeconds);
        accept = TimeSpan.FromSeconds(options.AcceptTimeoutSeconds);
        silence = new CancellationTokenSource(reply, time);
        either = CancellationTokenSource.CreateLinkedTokenSource(silence.Token, stop);
    }

    /// <summary>Fires on silence and on the caller's stop.</summary>
    public CancellationToken Token => either.Token;

    /// <summary>The server, or we to it, said something.</summary>
    public void Heard(SmtpPhase phase)
    {
        if (!silence.IsCancellationRequested) silence.CancelAfter(phase == SmtpPhase.Handed ? accept : reply);
    }

    public void Dispose()
    {
        either.Dispose();
        silence.Dispose();
    }
}
