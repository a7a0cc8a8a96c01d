using MimeKit;

namespace NightWatch.Pages.Subscribers;

/// <summary>What counts as one mail address that letters can go to.</summary>
internal static class MailAddresses
{
    public const string Accepted = "Accepted: one mail address such as name@example.org.";

    public static bool IsOne(string text) =>
        text.Length is > 2 and <= 254
        && MailboxAddress.TryParse(text, out var mailbox)
        && mailbox.Address == text
        && mailbox.Domain.Contains('.', StringComparison.Ordinal)
        && !text.Any(c => char.IsControl(c) || char.IsWhiteSpace(c));
}
