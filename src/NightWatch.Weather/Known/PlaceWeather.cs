using System.Collections.Immutable;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Known;

/// <summary>What is known about a place's weather: the one value that goes from the feeds through the plan to the stored verdict.</summary>
public sealed record PlaceWeather
{
    /// <summary>Nothing is known.</summary>
    public static PlaceWeather Unknown { get; } = new();

    /// <summary>The most preferred feed's newest run; null: no feed has anything that is not too old, the weather is unknown.</summary>
    public ForecastSeries? Newest { get; init; }

    /// <summary>Earlier runs of the same feed, newest first, for the agreement of runs.</summary>
    public ImmutableArray<ForecastSeries> EarlierRuns { get; init; } = [];

    /// <summary>Members of the ensemble; empty: none.</summary>
    public ImmutableArray<ForecastSeries> Members { get; init; } = [];

    /// <summary>The next feed's newest run, where one was wanted and is good.</summary>
    public ForecastSeries? SecondOpinion { get; init; }

    /// <summary>Its age in words must stand beside it: no feed gave a new answer.</summary>
    public bool IsStale { get; init; }

    /// <summary>Age of the newest run; null without one.</summary>
    public Duration? Age { get; init; }

    /// <summary>Rain by the hour as forecasts gave it, up to the last one of this pass.</summary>
    public ImmutableArray<RainEntry> Rain { get; init; } = [];

    /// <summary>What the feeds said that gave nothing, in the order they were asked.</summary>
    public ImmutableArray<FeedNote> Notes { get; init; } = [];
}
