using System.Text.RegularExpressions;
using MimeKit;
using MimeKit.Utils;
using NightWatch.Delivery.Mail;
using NightWatch.Store.Suppression;

namespace NightWatch.Delivery.Bounces;

/// <summary>What a delivery status notification (RFC 3464) says of one recipient of one message.</summary>
/// <param name="MessageId">Of the message it is about, without angle brackets.</param>
/// <param name="Recipient">The address it could not be given to, for good or for now.</param>
/// <param name="Reply">The status (RFC 3463) and the server's words, addresses struck out.</param>
internal sealed partial record DeliveryReport(string MessageId, string Recipient, ServerReply Reply)
{
    private const int MostWords = 300;

    /// <summary>
    /// Reads a report; anything else, and a report about nothing that failed or waits, gives nothing. A recipient stands twice where
    /// an address was rewritten on the way: as it was written by us and as it ended.
    /// </summary>
    public static IReadOnlyList<DeliveryReport> Of(MimeMessage message)
    {
        var status = message.BodyParts.OfType<MessageDeliveryStatus>().FirstOrDefault();
        if (status is null || MessageIdOf(message) is not { } about) return [];
        var reports = new List<DeliveryReport>();
        // The first group is about the message, each further one about a recipient (RFC 3464, 2.1).
        foreach (var group in status.StatusGroups.Skip(1))
        {
            var action = group["Action"]?.Trim().ToLowerInvariant();
            if (action is not ("failed" or "delayed") || StatusCode().Match(group["Status"] ?? "") is not { Success: true } code) continue;
            // "delayed" is no refusal, whatever number stands beside it.
            var number = action == "delayed" ? "4" + code.Value[1..] : code.Value;
            var words = Redaction.Of(Plain(group["Diagnostic-Code"]) is { Length: > 0 } said ? said : $"{action}, status {number}");
            var reply = new ServerReply(null, number, words.Length > MostWords ? words[..MostWords] + "…" : words);
            reports.AddRange(
                ((string[])["Original-Recipient", "Final-Recipient"])
                    .Select(name => AddressOf(group[name]))
                    .OfType<string>()
                    .Distinct(StringComparer.OrdinalIgnoreCase)
                    .Select(recipient => new DeliveryReport(about, recipient, reply)));
        }

        return reports;
    }

    // The returned message, or its header alone (RFC 3462, text/rfc822-headers).
    private static string? MessageIdOf(MimeMessage report)
    {
        foreach (var part in report.BodyParts)
        {
            switch (part)
            {
                case MessagePart { Message.MessageId: { Length: > 0 } id }:
                    return id;
                case TextPart headers
                    when headers.ContentType.IsMimeType("text", "rfc822-headers")
                        && HeaderLine().Match(headers.Text) is { Success: true } line:
                    return MimeUtils.EnumerateReferences(line.Groups[1].Value).FirstOrDefault();
            }
        }

        return null;
    }

    // "rfc822; ilse@example.org"
    private static string? AddressOf(string? field)
    {
        if (field is null) return null;
        var address = field[(field.IndexOf(';', StringComparison.Ordinal) + 1)..].Trim().Trim('<', '>');
        return MailboxAddress.TryParse(address, out var mailbox) ? mailbox.Address : null;
    }

    private static string Plain(string? field)
    {
        var text = field is null ? "" : field[(field.IndexOf(';', StringComparison.Ordinal) + 1)..];
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    [GeneratedRegex(@"\b[245]\.\d{1,3}\.\d{1,3}\b", RegexOptions.CultureInvariant)]
    private static partial Regex StatusCode();

    [GeneratedRegex(
        @"^Message-ID:\s*(<[^>\r\n]{1,300}>)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.Multiline)]
    private static partial Regex HeaderLine();
}
