using NodaTime;

namespace NightWatch.Weather.Rain;

/// <summary>Where the amounts that forecasts gave are kept by place and hour, so that a feed without a past gets one.</summary>
public interface IRainArchive
{
    /// <summary>Keeps amounts; of two for one hour the one said last.</summary>
    Task MergeAsync(string cell, IReadOnlyCollection<RainEntry> entries, CancellationToken cancellationToken);

    /// <summary>The amounts of the hours from an instant on, ascending.</summary>
    Task<IReadOnlyList<RainEntry>> SinceAsync(string cell, Instant since, CancellationToken cancellationToken);
}
