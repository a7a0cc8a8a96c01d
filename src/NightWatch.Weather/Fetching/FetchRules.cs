using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>How good a kept answer still is.</summary>
public enum Freshness
{
    /// <summary>As good as a new one.</summary>
    Good,

    /// <summary>Better than nothing; its age must be said.</summary>
    Stale,

    /// <summary>Too old to be told to anyone.</summary>
    TooOld,
}

/// <summary>When a feed may be asked and how long its answers serve. Pure.</summary>
public sealed record FetchRules
{
    /// <summary>Between two requests where the feed names no expiry, or one that is past when it comes.</summary>
    public Duration LeastInterval { get; init; } = Duration.FromMinutes(30);

    /// <summary>A kept answer up to this age serves without asking the next feed: no model runs more often than this by much.</summary>
    public Duration GoodFor { get; init; } = Duration.FromHours(6);

    /// <summary>A kept answer older than this is no forecast any more.</summary>
    public Duration StaleFor { get; init; } = Duration.FromHours(24);

    /// <summary>
    /// A run issued longer ago than this is stale however new the answer is: a feed was seen to serve the same run for days.
    /// </summary>
    public Duration RunGoodFor { get; init; } = Duration.FromHours(18);

    /// <summary>Where asking again cannot help before the operator acts: once a day, should it be mended at the other end.</summary>
    public Duration OperatorHold { get; init; } = Duration.FromHours(24);

    /// <summary>Answers closer than this are of one model run, whose agreement with itself would prove nothing.</summary>
    public Duration RunSpacing { get; init; } = Duration.FromHours(5);

    /// <summary>Whether a feed may be asked now.</summary>
    /// <param name="known">The newest kept answer; null for none.</param>
    /// <param name="heldUntil">The later of the holds of the feed and of the cell; null for none.</param>
    /// <param name="now">The clock reading.</param>
    public bool MayAsk(FetchedHead? known, Instant? heldUntil, Instant now) =>
        !(now < heldUntil)
        && (
            known is null
            || now >= (known.Expires is { } expires && expires > known.RetrievedAt ? expires : known.RetrievedAt + LeastInterval));

    /// <summary>How good an answer is, by when it was last confirmed and by when its run was issued.</summary>
    public Freshness Judge(Instant retrievedAt, Instant? issuedAt, Instant now)
    {
        var age = now - retrievedAt;
        if (age > StaleFor)
            return Freshness.TooOld;
        return age > GoodFor || now - issuedAt > RunGoodFor ? Freshness.Stale : Freshness.Good;
    }

    /// <summary>The age to be told: of the run where the feed says when it was issued, else of the answer.</summary>
    public static Duration Age(ForecastSeries series, Instant now) =>
        Duration.Max(Duration.Zero, now - Instant.Min(series.RetrievedAt, series.IssuedAt ?? series.RetrievedAt));

    /// <summary>The newest run and earlier ones that are runs of their own, newest first.</summary>
    /// <param name="runs">The last answered first. A feed's servers are not in step: an answer may hold an older run than the one before
    /// it.</param>
    /// <param name="most">How many are wanted.</param>
    public ImmutableArray<ForecastSeries> Distinct(IEnumerable<ForecastSeries> runs, int most)
    {
        var distinct = ImmutableArray.CreateBuilder<ForecastSeries>(most);
        foreach (var run in runs.OrderByDescending(Made))
        {
            if (distinct.Count < most && (distinct.Count == 0 || Made(distinct[^1]) - Made(run) >= RunSpacing))
                distinct.Add(run);
        }

        return distinct.ToImmutable();
    }

    private static Instant Made(ForecastSeries series) => series.IssuedAt ?? series.RetrievedAt;

    /// <summary>Until when a feed is held after it gave no answer; null: it may be asked at the next pass.</summary>
    public Instant? HoldUntil(Fetched.Unavailable none, Instant now)
    {
        var asked = none.AskAgainAfter ?? Duration.Zero;
        var hold = none.OperatorMustAct ? Duration.Max(asked, OperatorHold) : asked;
        return hold > Duration.Zero ? now + hold : null;
    }
}
