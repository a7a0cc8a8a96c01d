using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>What an outcome makes of a letter's row.</summary>
/// <param name="State">Where it stands now.</param>
/// <param name="NotBefore">When it is tried again; null: not at all.</param>
/// <param name="ClosedAt">Set when it is over.</param>
/// <param name="Reply">What the server said.</param>
/// <param name="QueueId">Proof of acceptance.</param>
/// <param name="Uncharged">1: the attempt does not count.</param>
/// <param name="Ambiguous">1: nobody can know whether it was accepted.</param>
internal sealed record Aftermath(
    OutboxState State,
    Instant? NotBefore,
    Instant? ClosedAt,
    ServerReply? Reply,
    string? QueueId = null,
    long Uncharged = 0,
    long Ambiguous = 0)
{
    public static Aftermath Of(SendOutcome outcome, Instant now) =>
        outcome switch
        {
            SendOutcome.Sent sent => new(OutboxState.Sent, null, now, null, sent.ServerText),
            SendOutcome.Retry retry => new(OutboxState.Retry, retry.At, null, retry.Reply),
            SendOutcome.Postponed postponed => new(OutboxState.Retry, postponed.Until, null, postponed.Reply, Uncharged: 1),
            SendOutcome.HeldBack held => new(
                OutboxState.Retry, held.Until, null, new(null, null, "waits its turn: so many letters a minute"), Uncharged: 1),
            SendOutcome.Ambiguous unknown => new(OutboxState.Retry, unknown.At, null, unknown.Reply, Ambiguous: 1),
            SendOutcome.Dead dead => new(OutboxState.Dead, null, now, dead.Reply),
            SendOutcome.Expired => new(OutboxState.Expired, null, now, null),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Unknown outcome."),
        };
}
