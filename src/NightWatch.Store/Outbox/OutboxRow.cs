using NightWatch.Store.Connections;
using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>A row as it stands in the table.</summary>
internal sealed class OutboxRow
{
    /// <summary>All but the letter itself.</summary>
    public const string Columns =
        "id, dedupe_key, message_id, kind, recipient, channel, created_at, not_before, not_after, state, attempt, unfinished, fence, "
        + "last_code, last_enhanced, last_text, ambiguous_count, remote_queue_id";

    public required long Id { get; init; }

    public required string DedupeKey { get; init; }

    public required string MessageId { get; init; }

    public required string Kind { get; init; }

    public required string Recipient { get; init; }

    public required LetterChannel Channel { get; init; }

    public required Instant CreatedAt { get; init; }

    public required Instant NotBefore { get; init; }

    public required Instant NotAfter { get; init; }

    public required OutboxState State { get; init; }

    public required long Attempt { get; init; }

    public required long Unfinished { get; init; }

    public required long Fence { get; init; }

    public long? LastCode { get; init; }

    public string? LastEnhanced { get; init; }

    public string? LastText { get; init; }

    public required long AmbiguousCount { get; init; }

    public string? RemoteQueueId { get; init; }

    public byte[] Mime { get; init; } = [];

    private ServerReply? LastReply => LastText is null ? null : new((int?)LastCode, LastEnhanced, LastText);

    public OutboxEntry ToEntry() => new()
    {
        Id = Id,
        DedupeKey = DedupeKey,
        MessageId = MessageId,
        Kind = Kind,
        Recipient = Recipient,
        Channel = Channel,
        State = State,
        CreatedAt = CreatedAt,
        NotBefore = NotBefore,
        NotAfter = NotAfter,
        Attempt = (int)Attempt,
        AmbiguousCount = (int)AmbiguousCount,
        LastReply = LastReply,
        RemoteQueueId = RemoteQueueId,
    };

    public OutboxLetter ToLetter() => new()
    {
        Id = Id,
        DedupeKey = DedupeKey,
        MessageId = MessageId,
        Kind = Kind,
        Recipient = Recipient,
        Channel = Channel,
        State = State,
        CreatedAt = CreatedAt,
        NotBefore = NotBefore,
        NotAfter = NotAfter,
        Attempt = (int)Attempt,
        AmbiguousCount = (int)AmbiguousCount,
        LastReply = LastReply,
        RemoteQueueId = RemoteQueueId,
        Mime = Gzip.Decompress(Mime),
        Fence = Fence,
        Unfinished = (int)Unfinished,
    };
}
