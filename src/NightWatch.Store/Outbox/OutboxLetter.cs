using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>Where a letter stands.</summary>
public enum OutboxState
{
    /// <summary>Not tried yet.</summary>
    Pending,

    /// <summary>In hand, under a lease.</summary>
    Sending,

    /// <summary>Tried, to be tried again.</summary>
    Retry,

    /// <summary>Accepted by the mail server.</summary>
    Sent,

    /// <summary>Given up; an operator may put it back.</summary>
    Dead,

    /// <summary>Its time passed before it could be sent.</summary>
    Expired,

    /// <summary>A later letter on the same night took its place unsent.</summary>
    Superseded,

    /// <summary>Its recipient wants no letters any more.</summary>
    Suppressed,
}

/// <summary>How a letter travels.</summary>
public enum LetterChannel
{
    /// <summary>By mail.</summary>
    Mail,

    /// <summary>As a signed call to an address of the subscriber's own.</summary>
    Webhook,
}

/// <summary>One letter on its way, as a list shows it.</summary>
public record OutboxEntry
{
    /// <summary>Its row.</summary>
    public required long Id { get; init; }

    /// <summary>See <see cref="OutboxDraft.DedupeKey"/>.</summary>
    public required string DedupeKey { get; init; }

    /// <summary>Without the angle brackets.</summary>
    public required string MessageId { get; init; }

    /// <summary>What kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The one recipient: a mail address, or the https address of a call.</summary>
    public required string Recipient { get; init; }

    /// <summary>How it travels.</summary>
    public LetterChannel Channel { get; init; }

    /// <summary>Where it stands.</summary>
    public required OutboxState State { get; init; }

    /// <summary>When it was queued.</summary>
    public required Instant CreatedAt { get; init; }

    /// <summary>Not to be sent earlier.</summary>
    public required Instant NotBefore { get; init; }

    /// <summary>Later than this it is dropped.</summary>
    public required Instant NotAfter { get; init; }

    /// <summary>Attempts charged to it, the one in hand included.</summary>
    public required int Attempt { get; init; }

    /// <summary>Attempts of which nobody can know whether the server took the letter.</summary>
    public required int AmbiguousCount { get; init; }

    /// <summary>The last answer; null: none yet.</summary>
    public ServerReply? LastReply { get; init; }

    /// <summary>The server's text at acceptance: the only proof there is.</summary>
    public string? RemoteQueueId { get; init; }
}

/// <summary>A letter in hand.</summary>
public sealed record OutboxLetter : OutboxEntry
{
    /// <summary>The whole message, CRLF line ends.</summary>
    public required ReadOnlyMemory<byte> Mime { get; init; }

    /// <summary>Raised by each claim; an update with an older fence changes no row, so a woken sender cannot overwrite.</summary>
    public required long Fence { get; init; }

    /// <summary>Claims in a row that ended without an outcome (the process died), this one included.</summary>
    public required int Unfinished { get; init; }
}

/// <summary>What came of an attempt. Closed.</summary>
public abstract record SendOutcome
{
    private SendOutcome()
    {
    }

    /// <summary>The server took it.</summary>
    /// <param name="ServerText">What the server said, with its queue id.</param>
    public sealed record Sent(string ServerText) : SendOutcome;

    /// <summary>Refused for now; charged to the letter.</summary>
    public sealed record Retry(Instant At, ServerReply Reply) : SendOutcome;

    /// <summary>The server was not there; not the letter's fault and not charged to it.</summary>
    public sealed record Postponed(Instant Until, ServerReply Reply) : SendOutcome;

    /// <summary>A limit of letters a minute lets others go first; not tried and not charged.</summary>
    public sealed record HeldBack(Instant Until) : SendOutcome;

    /// <summary>Nobody can know whether it was accepted; charged.</summary>
    public sealed record Ambiguous(Instant At, ServerReply Reply) : SendOutcome;

    /// <summary>Given up.</summary>
    /// <param name="Reply">What was said.</param>
    /// <param name="Refused">The recipient's server refused it for good: it counts against the address.</param>
    public sealed record Dead(ServerReply Reply, bool Refused = false) : SendOutcome;

    /// <summary>Too late to be of use.</summary>
    public sealed record Expired : SendOutcome;
}
