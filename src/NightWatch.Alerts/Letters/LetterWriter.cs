using MimeKit;
using NightWatch.Alerts.Policy;
using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Alerts.Letters;

/// <summary>Who sends.</summary>
/// <param name="From">Header From; the calendar's organizer.</param>
/// <param name="MessageIdDomain">Right side of the Message-IDs.</param>
/// <param name="PagesBase">Where links lead; null: no pages, no links.</param>
/// <param name="ListUnsubscribe">Mail address or URL for List-Unsubscribe; null: none.</param>
public sealed record LetterHead(MailboxAddress From, string MessageIdDomain, Uri? PagesBase = null, string? ListUnsubscribe = null);

/// <summary>Another night here or another site tonight, checked by the same code.</summary>
/// <param name="Plan">Its whole plan.</param>
/// <param name="DriveKm">One way, km; null for the same site.</param>
public sealed record Alternative(NightPlan Plan, double? DriveKm);

/// <summary>What a letter is written from. Several orders of one kind to one subscriber share a letter.</summary>
public sealed record LetterDraft
{
    /// <summary>One or more orders of the same kind, the best night first.</summary>
    public required IReadOnlyList<LetterOrder> Orders { get; init; }

    /// <summary>Ranked alternatives by watch id; empty where there are none.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Alternative>> Alternatives { get; init; } = new Dictionary<string, IReadOnlyList<Alternative>>();

    /// <summary>The clock reading: header Date and "written at".</summary>
    public required Instant Now { get; init; }
}

/// <summary>A finished letter.</summary>
/// <param name="DedupeKey">kind|watches|night|recipient|revision; unique in the outbox.</param>
/// <param name="Kind">Which.</param>
/// <param name="Message">Ready to send; the same bytes for every attempt.</param>
/// <param name="Html">The HTML part with its pictures inlined as data URIs, for the rehearsal's folder.</param>
/// <param name="Text">The plain text part.</param>
/// <param name="NotAfter">Later than this it is dropped.</param>
public sealed record Letter(string DedupeKey, LetterKind Kind, MimeMessage Message, string Html, string Text, Instant NotAfter);

/// <summary>Writes letters. Pure but for the template renderer it owns.</summary>
public sealed class LetterWriter(LetterHead head)
{
    /// <summary>Who sends.</summary>
    public LetterHead Head { get; } = head;

    /// <summary>Writes one letter.</summary>
    public Task<Letter> WriteAsync(LetterDraft draft, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
