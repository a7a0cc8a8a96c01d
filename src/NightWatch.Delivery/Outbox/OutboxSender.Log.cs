using NodaTime;

namespace NightWatch.Delivery.Outbox;

internal sealed partial class OutboxSender
{
    [LoggerMessage(
        301,
        LogLevel.Information,
        "Outbox: {Sent} sent, {Retried} to be tried again, {Dead} given up, {Expired} expired, {Postponed} postponed")]
    private partial void LogRound(int sent, int retried, int dead, int expired, int postponed);

    [LoggerMessage(302, LogLevel.Debug, "Letter {Id} ({Kind}) sent at attempt {Attempt}: {Answer}")]
    private partial void LogSent(long id, string kind, int attempt, string answer);

    [LoggerMessage(303, LogLevel.Warning, "Letter {Id} ({Kind}) not sent at attempt {Attempt}, again at {At}: {Answer}")]
    private partial void LogRetry(long id, string kind, int attempt, Instant at, string answer);

    [LoggerMessage(304, LogLevel.Error, "Letter {Id} ({Kind}) given up at attempt {Attempt}: {Answer}")]
    private partial void LogDead(long id, string kind, int attempt, string answer);

    [LoggerMessage(305, LogLevel.Warning, "Letter {Id} ({Kind}) dropped: it was of use until {NotAfter}")]
    private partial void LogExpired(long id, string kind, Instant notAfter);

    [LoggerMessage(306, LogLevel.Warning, "No letters until {Until}: {Answer}")]
    private partial void LogPaused(Instant until, string answer);

    [LoggerMessage(307, LogLevel.Error, "Mail needs an operator: {Answer}")]
    private partial void LogOperatorMustAct(string answer);

    [LoggerMessage(308, LogLevel.Information, "Letter {Id} ({Kind}) was withdrawn before it left")]
    private partial void LogWithdrawn(long id, string kind);

    [LoggerMessage(309, LogLevel.Warning, "Letter {Id} ({Kind}) was taken over by another process while it was in hand here")]
    private partial void LogOvertaken(long id, string kind);

    [LoggerMessage(310, LogLevel.Warning, "The outcome of letter {Id} cannot be written down yet: {Fault}")]
    private partial void LogDatabaseAway(long id, string fault);

    [LoggerMessage(311, LogLevel.Information, "{Letters} letters to {Domain} wait their turn: Mail:MostPerMinutePerDomain")]
    private partial void LogDomainSpent(int letters, string domain);
}
