using NightWatch.Service.Mail;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Service.Outbox;

/// <summary>What one round did.</summary>
public sealed record SendRound(int Sent, int Retried, int Dead, int Expired, int Postponed);

/// <summary>Sends what is queued: claims, re-checks, sends one at a time, writes down what came of it.</summary>
public sealed class OutboxSender(OutboxStore outbox, IMailTransport transport, IClock clock, TimeProvider time, ILogger<OutboxSender> log)
{
    /// <summary>Sends until nothing may be sent now. On a stop request the letter in hand is finished, the others are given back.</summary>
    public Task<SendRound> SendDueAsync(CancellationToken cancellationToken) => throw new NotImplementedException();
}
