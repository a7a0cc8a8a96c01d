using NodaTime;

namespace NightWatch.Store;

/// <summary>How long things are kept.</summary>
public sealed record RetentionRule
{
    /// <summary>Runs kept of each feed and place.</summary>
    public int ForecastRuns { get; init; } = 12;

    /// <summary>Forecasts older than this go, whatever their number.</summary>
    public Duration Forecasts { get; init; } = Duration.FromDays(14);

    /// <summary>Closed letters older than this go.</summary>
    public Duration Letters { get; init; } = Duration.FromDays(30);

    /// <summary>Evaluations and memories of nights older than this go.</summary>
    public Duration Verdicts { get; init; } = Duration.FromDays(400);

    /// <summary>Done and dropped due items older than this go.</summary>
    public Duration Due { get; init; } = Duration.FromDays(14);
}

/// <summary>Rows that went.</summary>
public sealed record Retained(int Forecasts, int Letters, int Verdicts, int ToldNights, int Due);

/// <summary>Lets old rows go.</summary>
public sealed class Retention(Database database)
{
    /// <summary>Applies the rule.</summary>
    public Task<Retained> ApplyAsync(RetentionRule rule, Instant now, CancellationToken cancellationToken = default) => throw new NotImplementedException();
}
