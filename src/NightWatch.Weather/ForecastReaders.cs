using System.Collections.Immutable;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Nws;
using NightWatch.Weather.OpenMeteo;

namespace NightWatch.Weather;

/// <summary>The readers of stored answers, by feed.</summary>
public static class ForecastReaders
{
    /// <summary>All of them. A new feed adds its line here.</summary>
    public static ImmutableArray<IForecastReader> All { get; } =
        [new MetNorwayReader(), new OpenMeteoReader(), new NwsGridpointReader(), new FakeReader()];

    /// <summary>All readers of members.</summary>
    public static ImmutableArray<IEnsembleReader> Ensembles { get; } = [new OpenMeteoEnsembleReader(), new FakeReader()];

    /// <summary>The reader of a feed.</summary>
    /// <exception cref="ArgumentException">There is no such feed; the sentence says which there are.</exception>
    public static IForecastReader For(string feedId) =>
        All.FirstOrDefault(reader => reader.FeedId == feedId)
        ?? throw new ArgumentException($"There is no feed '{feedId}'; accepted: {string.Join(", ", All.Select(r => r.FeedId))}.");

    /// <summary>The reader of an ensemble feed.</summary>
    /// <exception cref="ArgumentException">There is no such feed; the sentence says which there are.</exception>
    public static IEnsembleReader ForEnsemble(string feedId) =>
        Ensembles.FirstOrDefault(reader => reader.FeedId == feedId)
        ?? throw new ArgumentException($"There is no ensemble '{feedId}'; accepted: {string.Join(", ", Ensembles.Select(r => r.FeedId))}.");
}
