using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Gets forecasts by the rules: asks as little as can be, keeps what comes, falls back where nothing does.</summary>
/// <param name="feeds">In the order of preference.</param>
/// <param name="ensemble">For the members; null for none.</param>
/// <param name="archive">Where answers are kept.</param>
/// <param name="rain">Where rain is kept.</param>
/// <param name="holds">The feeds that are not to be asked yet, and until when.</param>
/// <param name="clock">The time.</param>
/// <param name="rules">When and how long.</param>
/// <param name="reader">Who reads what is kept, for a caller who stands in between; null: <see cref="KeptAnswer.Read"/>.</param>
public sealed class ForecastFetcher(
    IReadOnlyList<IForecastFeed> feeds,
    IEnsembleFeed? ensemble,
    IForecastArchive archive,
    IRainArchive rain,
    IFeedHolds holds,
    IClock clock,
    FetchRules rules,
    Func<KeptAnswer, ImmutableArray<ForecastSeries>>? reader = null)
{
    private readonly ReadAnswers read = new(reader ?? (kept => kept.Read()));

    /// <summary>Begins a pass, in which each feed is asked at most once for each cell, however many places lie in it.</summary>
    /// <param name="earlierRuns">How many earlier runs are wanted with each forecast.</param>
    /// <param name="secondOpinion">Whether the next feed's forecast is wanted too.</param>
    /// <param name="cancellationToken">Stops the whole pass.</param>
    public ForecastPass BeginPass(int earlierRuns, bool secondOpinion, CancellationToken cancellationToken) =>
        Begin(holds, earlierRuns, secondOpinion, cancellationToken);

    /// <summary>The same with the kept answers alone: no feed is asked and nothing is written, for a reader who waits.</summary>
    public ForecastPass BeginReading(int earlierRuns, bool secondOpinion, CancellationToken cancellationToken) =>
        Begin(new NeverAsked(), earlierRuns, secondOpinion, cancellationToken);

    private ForecastPass Begin(IFeedHolds held, int earlierRuns, bool secondOpinion, CancellationToken cancellationToken) =>
        new(
            new FeedAsker(archive, read, held, clock, rules),
            read,
            rain,
            feeds,
            ensemble,
            clock,
            rules,
            earlierRuns,
            secondOpinion,
            cancellationToken);
}
