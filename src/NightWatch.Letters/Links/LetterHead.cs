using MimeKit;

namespace NightWatch.Letters.Links;

/// <summary>Who sends.</summary>
/// <param name="From">Header From; the calendar's organizer.</param>
/// <param name="MessageIdDomain">Right side of the Message-IDs.</param>
/// <param name="PagesBase">Where links lead; null: no pages, no links.</param>
/// <param name="ListUnsubscribe">Mail address or URL for List-Unsubscribe where there are no pages; null: none.</param>
public sealed record LetterHead(MailboxAddress From, string MessageIdDomain, Uri? PagesBase = null, string? ListUnsubscribe = null)
{
    /// <summary>
    /// Secret of the instance behind Message-IDs and calendar UIDs; empty: plain hashes. Changing it starts new threads and entries.
    /// </summary>
    public ReadOnlyMemory<byte> IdKey { get; init; }

    /// <summary>Signs the links; null: no links, wherever the pages are.</summary>
    public ILinkSigner? Signer { get; init; }

    /// <summary>Where links lead.</summary>
    public LetterLinks Links => new(PagesBase, Signer);
}
