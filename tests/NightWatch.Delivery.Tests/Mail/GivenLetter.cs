using System.Text;
using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>A letter to an invented photographer.</summary>
internal static class GivenLetter
{
    public static readonly Instant Now = Instant.FromUtc(2027, 3, 4, 18, 0);

    /// <summary>Dots at line starts and umlauts, since both are where transports go wrong.</summary>
    public static OutboxDraft Draft(
        string key = "outlook-1", Instant? notBefore = null, Instant? notAfter = null, string to = "ilse@example.org")
    {
        var message = new MimeMessage
        {
            Subject = "Go – Windmill Bend – night of 6–7 Mar",
            MessageId = $"{key}@nightwatch.example.org",
            Date = Now.ToDateTimeOffset(),
            Body = new TextPart("plain") { Text = "Sternklar über dem Fluß.\n.\n..dots\n" + new string('x', 200) + "\n" },
        };
        message.From.Add(new MailboxAddress("NightWatch", "watch@nightwatch.example.org"));
        message.To.Add(new MailboxAddress("Ilse Vermaak", to));
        message.Headers.Add("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        message.Headers.Add("List-Unsubscribe", "<https://nightwatch.example.org/unsubscribe/0123456789abcdef0123456789abcdef>");
        return OutboxDraft.Of(
            new Letter(key, LetterKind.Outlook, message, "", "", notAfter ?? Now + Duration.FromDays(1)), [], notBefore ?? Now);
    }

    public static OutboxLetter InHand(ReadOnlyMemory<byte>? mime = null)
    {
        var draft = Draft();
        return new()
        {
            Id = 7,
            DedupeKey = draft.DedupeKey,
            MessageId = draft.MessageId,
            Kind = draft.Kind,
            Recipient = draft.Recipient,
            State = OutboxState.Sending,
            CreatedAt = Now,
            NotBefore = Now,
            NotAfter = draft.NotAfter,
            Attempt = 1,
            AmbiguousCount = 0,
            Mime = mime ?? draft.Mime,
            Fence = 1,
            Unfinished = 1,
        };
    }

    public static string Text(ReadOnlyMemory<byte> mime) => Encoding.ASCII.GetString(mime.Span);
}
