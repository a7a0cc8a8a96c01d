using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Fetching;

/// <summary>Who reads the stored answers of a feed: all that there are, unless the caller wants to stand in between.</summary>
/// <param name="Forecast">The reader of a feed by its id.</param>
/// <param name="Members">The reader of an ensemble by its id.</param>
public sealed record FeedReaders(Func<string, IForecastReader> Forecast, Func<string, IEnsembleReader> Members)
{
    /// <summary>Those of <see cref="ForecastReaders"/>.</summary>
    public static FeedReaders Plain { get; } = new(ForecastReaders.For, ForecastReaders.ForEnsemble);
}
