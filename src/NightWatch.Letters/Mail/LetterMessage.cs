using System.Text;
using MimeKit;
using NightWatch.Letters.Calendar;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Notices;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Views;
using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Letters.Mail;

/// <summary>A picture of a letter and the id by which its HTML names it.</summary>
internal sealed record LetterPicture(string ContentId, byte[] Png);

/// <summary>Puts a letter into an envelope of MIME.</summary>
/// <remarks>
/// mixed(alternative(text, related(html, pictures), calendar), calendar file): the order in which mail programs pick the richest part
/// they know, and the second copy of the entry for those that only look at attachments.
/// </remarks>
internal static class LetterMessage
{
    private const int AddressNameMost = 64;

    /// <summary>Builds the message; the same input gives the same bytes.</summary>
    public static MimeMessage Of(
        LetterDraft draft, LetterHead head, LetterView view, LetterIds ids, string text, string html, IReadOnlyList<LetterPicture> pictures)
    {
        var key = LetterIds.DedupeKey(draft);
        var message = new MimeMessage
        {
            MessageId = ids.Message(key),
            Date = draft.Now.ToDateTimeOffset(),
            Subject = PlainWords.OneLine(view.Subject),
            Body = Body(draft, head, ids, text, html, pictures),
        };
        message.From.Add(Sender(head));
        message.To.Add(Recipient(draft.Orders[0].Plan.Watch.Subscriber));
        foreach (var thread in draft.Orders.Select(ids.Thread)) message.References.Add(thread);
        message.InReplyTo = ids.Thread(draft.Orders[0]);
        AddListHeaders(message, head, draft.UnsubscribeAt(head));
        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }

    /// <summary>Builds a notice; it belongs to no thread, and to the list only where it can be stopped.</summary>
    public static MimeMessage Of(NoticeDraft draft, LetterHead head, LetterIds ids, string text, string html)
    {
        var alternative = new MultipartAlternative { TextPart("plain", text), TextPart("html", html) };
        alternative.Boundary = ids.Boundary(draft.Key, "alt");
        var message = new MimeMessage
        {
            MessageId = ids.Message(draft.Key),
            Date = draft.Now.ToDateTimeOffset(),
            Subject = PlainWords.OneLine(draft.View.Subject),
            Body = alternative,
        };
        message.From.Add(Sender(head));
        message.To.Add(Recipient(draft.To));
        if (draft.IsOfTheList) AddListHeaders(message, head, draft.Unsubscribe);
        else message.Headers.Add("Auto-Submitted", "auto-generated");
        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }

    /// <summary>What every letter says to mail programs about itself.</summary>
    private static void AddListHeaders(MimeMessage message, LetterHead head, string? unsubscribe)
    {
        message.Headers.Add("Auto-Submitted", "auto-generated");
        message.Headers.Add(HeaderId.ListId, $"NightWatch letters <letters.{head.MessageIdDomain}>");
        Unsubscribe(message, unsubscribe);
    }

    // RFC 2369; a one-click POST (RFC 8058) is promised only where the address can take one.
    private static void Unsubscribe(MimeMessage message, string? where)
    {
        if (where is null) return;
        if (Uri.TryCreate(where, UriKind.Absolute, out var url) && url.Scheme is "https" or "http")
        {
            message.Headers.Add(HeaderId.ListUnsubscribe, $"<{url.AbsoluteUri}>");
            // RFC 8058, 3.1: the one click is for https alone.
            if (url.Scheme == Uri.UriSchemeHttps) message.Headers.Add(HeaderId.ListUnsubscribePost, "List-Unsubscribe=One-Click");
        }
        else if (MailboxAddress.TryParse(where, out var mailbox))
        {
            message.Headers.Add(HeaderId.ListUnsubscribe, $"<mailto:{mailbox.Address}?subject=unsubscribe>");
        }
        else
        {
            throw new ArgumentException($"List-Unsubscribe '{where}' is neither a web address nor a mail address.", nameof(where));
        }
    }

    // One of its own for each letter: an address knows all the letters that it stands in, and would hold them as long as the service runs.
    private static MailboxAddress Sender(LetterHead head) => (MailboxAddress)head.From.Clone();

    private static MailboxAddress Recipient(Subscriber subscriber)
    {
        var name = PlainWords.Shortened(PlainWords.OneLine(subscriber.Name), AddressNameMost);
        return MailboxAddress.TryParse(subscriber.Address, out var mailbox) && mailbox.Address == subscriber.Address.Trim()
            ? new MailboxAddress(name, mailbox.Address)
            : throw new ArgumentException($"The address of subscriber '{name}' is not one mail address.", nameof(subscriber));
    }

    private static Multipart Body(
        LetterDraft draft, LetterHead head, LetterIds ids, string text, string html, IReadOnlyList<LetterPicture> pictures)
    {
        var key = LetterIds.DedupeKey(draft);
        var entries = draft
            .Orders.Where(o => o.Calendar != CalendarChange.None)
            .Select(o => NightEntry.Of(o, head, ids, draft.Now))
            .ToArray();
        var alternative = new MultipartAlternative { TextPart("plain", text), Related(ids, key, html, pictures) };
        alternative.Boundary = ids.Boundary(key, "alt");
        var mixed = new Multipart("mixed") { alternative };
        mixed.Boundary = ids.Boundary(key, "mix");
        // One entry inside the letter itself; iTIP wants one UID a request (RFC 5546, 3.2.2), so further nights come as files only.
        if (entries.Length > 0) alternative.Add(CalendarPart(entries[0]));
        for (var i = 0; i < entries.Length; i++) mixed.Add(CalendarFile(entries[i], i == 0 ? "night.ics" : $"night-{i + 1}.ics"));
        return mixed;
    }

    private static MultipartRelated Related(LetterIds ids, string key, string html, IReadOnlyList<LetterPicture> pictures)
    {
        var related = new MultipartRelated { Root = TextPart("html", html), Boundary = ids.Boundary(key, "rel") };
        for (var i = 0; i < pictures.Count; i++)
        {
            related.Add(new MimePart("image", "png")
            {
                ContentId = pictures[i].ContentId,
                Content = new MimeContent(new MemoryStream(pictures[i].Png)),
                ContentTransferEncoding = ContentEncoding.Base64,
                ContentDisposition = new ContentDisposition(ContentDisposition.Inline) { FileName = $"night-{i + 1}.png" },
            });
        }

        return related;
    }

    private static TextPart TextPart(string subtype, string content)
    {
        var part = new TextPart(subtype);
        part.SetText(Encoding.UTF8, content);
        return part;
    }

    private static TextPart CalendarPart(NightEntry entry)
    {
        var part = TextPart("calendar", entry.Text);
        part.ContentType.Parameters.Add("method", entry.Method);
        return part;
    }

    private static MimePart CalendarFile(NightEntry entry, string fileName)
    {
        var part = new MimePart("application", "ics")
        {
            Content = new MimeContent(new MemoryStream(Encoding.UTF8.GetBytes(entry.Text))),
            ContentTransferEncoding = ContentEncoding.Base64,
            ContentDisposition = new ContentDisposition(ContentDisposition.Attachment) { FileName = fileName },
        };
        part.ContentType.Name = fileName;
        return part;
    }
}
