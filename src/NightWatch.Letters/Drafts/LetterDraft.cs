using MimeKit;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Calls;
using NodaTime;

namespace NightWatch.Letters.Drafts;

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
    public IReadOnlyDictionary<string, IReadOnlyList<Alternative>> Alternatives { get; init; } =
        new Dictionary<string, IReadOnlyList<Alternative>>();

    /// <summary>What came of the watches' earlier calls, by watch id; empty where nothing is known.</summary>
    public IReadOnlyDictionary<string, TrackRecord> Tracks { get; init; } = new Dictionary<string, TrackRecord>();

    /// <summary>
    /// Where this subscriber stops the letters, an https URL or a mail address; null: the pages, or else as the head says.
    /// </summary>
    public string? Unsubscribe { get; init; }

    /// <summary>It is the reader's first letter after an upgrade, and says what is new.</summary>
    public bool TellsNews { get; init; }

    /// <summary>The clock reading: header Date and "written at".</summary>
    public required Instant Now { get; init; }

    /// <summary>Where the reader of this letter stops the letters; null: nowhere.</summary>
    /// <param name="head">Who sends.</param>
    internal string? UnsubscribeAt(LetterHead head) =>
        Unsubscribe ?? head.Links.Unsubscribe(Orders[0].Plan.Watch)?.AbsoluteUri ?? head.ListUnsubscribe;
}

/// <summary>A finished letter.</summary>
/// <param name="DedupeKey">kind|watches|night|recipient|revision; unique in the outbox.</param>
/// <param name="Kind">Which letter it is.</param>
/// <param name="Message">Ready to send; the same bytes for every attempt.</param>
/// <param name="Html">The HTML part with its pictures inlined as data URIs, for the rehearsal's folder.</param>
/// <param name="Text">The plain text part.</param>
/// <param name="NotAfter">Later than this it is dropped.</param>
public sealed record Letter(string DedupeKey, LetterKind Kind, MimeMessage Message, string Html, string Text, Instant NotAfter);
