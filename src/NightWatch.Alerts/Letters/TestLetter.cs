using System.Text.Encodings.Web;
using MimeKit;
using NightWatch.Alerts.Letters.Layout;
using NightWatch.Alerts.Letters.Mail;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Alerts.Letters;

/// <summary>A letter that says nothing but that letters arrive. It carries the headers of the real ones, so that a relay treats it alike.</summary>
public static class TestLetter
{
    /// <summary>Writes it.</summary>
    /// <param name="head">Who sends.</param>
    /// <param name="to">The recipient.</param>
    /// <param name="now">The clock reading: header Date and the time in the text.</param>
    public static MimeMessage Of(LetterHead head, MailboxAddress to, Instant now)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(to);
        var ids = new LetterIds(head.MessageIdDomain, head.IdKey);
        string[] says =
        [
            "This is a test letter from NightWatch. That you read it means that letters from this installation reach you.",
            "It is about no night and asks nothing of you. Should it lie in the junk folder, mark its sender as wanted, or the word that a night is off will lie there too.",
            $"Written {InstantPattern.General.Format(now)}, from {head.From.Address}.",
        ];
        var key = $"test|{to.Address}|{now.ToUnixTimeMilliseconds()}";
        var alternative = new MultipartAlternative
        {
            Part("plain", says.Aggregate(new TextPage(), (page, paragraph) => page.Gap().Paragraph(paragraph)).ToString()),
            Part("html", Page(says)),
        };
        alternative.Boundary = ids.Boundary(key, "alt");
        var message = new MimeMessage { MessageId = ids.Message(key), Date = now.ToDateTimeOffset(), Subject = "NightWatch test letter: mail arrives", Body = alternative };
        message.From.Add(head.From);
        message.To.Add(to);
        LetterMessage.AddListHeaders(message, head, head.ListUnsubscribe);
        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }

    private static string Page(IEnumerable<string> says) =>
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
        + "<title>NightWatch test letter</title></head><body>\n<h1>NightWatch test letter</h1>\n"
        + string.Concat(says.Select(paragraph => $"<p>{HtmlEncoder.Default.Encode(paragraph)}</p>\n")) + "</body></html>\n";

    private static TextPart Part(string subtype, string content)
    {
        var part = new TextPart(subtype);
        part.SetText(System.Text.Encoding.UTF8, content);
        return part;
    }
}
