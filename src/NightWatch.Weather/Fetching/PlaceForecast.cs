using System.Collections.Immutable;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>What is known about a place's weather in one pass.</summary>
public sealed record PlaceForecast
{
    /// <summary>The most preferred feed's newest run; null: no feed has anything that is not too old.</summary>
    public KeptRun? Newest { get; init; }

    /// <summary>Earlier runs of the same feed, newest first.</summary>
    public ImmutableArray<KeptRun> EarlierRuns { get; init; } = [];

    /// <summary>The next feed's newest run, where one was wanted and is good.</summary>
    public KeptRun? SecondOpinion { get; init; }

    /// <summary>Its age in words must stand beside it: no feed gave a new answer.</summary>
    public bool IsStale { get; init; }

    /// <summary>Age of the newest run; null without one.</summary>
    public Duration? Age { get; init; }

    /// <summary>Rain by the hour as forecasts gave it, up to the last one of this pass.</summary>
    public ImmutableArray<RainEntry> Rain { get; init; } = [];

    /// <summary>What the feeds said that gave nothing, in the order they were asked.</summary>
    public ImmutableArray<FeedNote> Notes { get; init; } = [];
}

/// <summary>A kept answer, read.</summary>
public sealed record KeptRun(long Id, ForecastSeries Series);

/// <summary>The members of a pass and what went wrong with them.</summary>
public sealed record PlaceMembers(ImmutableArray<ForecastSeries> Members, ImmutableArray<FeedNote> Notes)
{
    /// <summary>The kept answer they were read from; null: none.</summary>
    public long? Id { get; init; }
}

/// <summary>Why a feed gave nothing.</summary>
/// <param name="FeedId">Which.</param>
/// <param name="Why">One sentence.</param>
/// <param name="OperatorMustAct">It will not mend itself.</param>
public sealed record FeedNote(string FeedId, string Why, bool OperatorMustAct);
