using MimeKit;
using NightWatch.Delivery.Mail;
using NightWatch.Letters;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>One letter through the configured transport, the whole way.</summary>
internal static class SendTest
{
    private static readonly Duration Use = Duration.FromHours(1);

    /// <summary>Refuses what is not one address.</summary>
    /// <exception cref="BadInputException">It is none.</exception>
    public static MailboxAddress AddressOf(string text) =>
        MailboxAddress.TryParse(text, out var address) && address.Address.Contains('@', StringComparison.Ordinal)
            ? address
            : throw new BadInputException($"--send-test: '{text}' is not a mail address; accepted: name@example.org.");

    public static async Task<Finding> RunAsync(AllSettings settings, MailboxAddress to, IClock clock, CancellationToken stop)
    {
        if (settings.Mail.Faults().Count > 0) return Finding.Fault("test letter", "not sent, as the mail configuration is wrong.");
        var now = clock.GetCurrentInstant();
        var transport = MailTransports.Create(settings.Mail, TimeProvider.System);
        try
        {
            using var writer = new LetterWriter(settings.Head());
            var test = await writer.WriteTestAsync(to.Address, now, stop);
            return await transport.SendAsync(Letter(test.Message, to, now), stop) switch
            {
                Handover.Accepted accepted when settings.Mail.IsSmtp => Finding.Ok(
                    "test letter", $"accepted for {to.Address}: {accepted.ServerText}"),
                Handover.Accepted accepted => Finding.Ok(
                    "test letter", $"written to {accepted.ServerText} in the folder {settings.Mail.Folder}."),
                Handover.Failed failed => Finding.Fault(
                    "test letter", $"{failed.Class.ToString().ToLowerInvariant()}: {failed.Reply.Text}"),
                var other => throw new InvalidOperationException($"A transport answered with {other.GetType()}."),
            };
        }
        finally
        {
            if (transport is IAsyncDisposable closing) await closing.DisposeAsync();
        }
    }

    // It never was in the outbox, and so has no row there; it is tried once.
    private static OutboxLetter Letter(MimeMessage message, MailboxAddress to, Instant now)
    {
        using var mime = new MemoryStream();
        message.WriteTo(mime);
        return new OutboxLetter
        {
            Id = 0,
            DedupeKey = message.MessageId!,
            MessageId = message.MessageId!,
            Kind = "Test",
            Recipient = to.Address,
            State = OutboxState.Sending,
            CreatedAt = now,
            NotBefore = now,
            NotAfter = now + Use,
            Attempt = 1,
            AmbiguousCount = 0,
            Mime = mime.ToArray(),
            Fence = 0,
            Unfinished = 1,
        };
    }
}
