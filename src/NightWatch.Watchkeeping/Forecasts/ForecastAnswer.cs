using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>What is known about the weather of a place in one pass.</summary>
internal sealed record ForecastAnswer
{
    /// <summary>The newest run of the most trusted feed that has one; null: the weather is unknown.</summary>
    public ForecastSeries? Series { get; init; }

    /// <summary>Earlier runs of the same feed, newest first.</summary>
    public IReadOnlyList<ForecastSeries> EarlierRuns { get; init; } = [];

    /// <summary>Members of the ensemble; empty: none.</summary>
    public IReadOnlyList<ForecastSeries> Members { get; init; } = [];

    /// <summary>The next feed's newest run.</summary>
    public ForecastSeries? SecondOpinion { get; init; }

    /// <summary>The stored answers behind it all: newest, second, earlier ones, members.</summary>
    public (long? Newest, long? SecondOpinion, IReadOnlyList<long> Earlier, long? Members) Stored { get; init; } = (null, null, [], null);

    /// <summary>What the record taught about each feed and lead.</summary>
    public CalibrationBook Calibrations { get; init; } = CalibrationBook.Empty;

    /// <summary>Rain by the hour as forecasts gave it shortly before.</summary>
    public IReadOnlyList<RainEntry> Rain { get; init; } = [];
}
