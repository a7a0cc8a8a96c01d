using System.Diagnostics;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>A feed that is timed from outside, its answer untouched.</summary>
internal sealed class MeasuredFeed(IForecastFeed feed, Telemetry telemetry, FeedLedger ledger, KnownShares shares) : IForecastFeed
{
    public string Id => feed.Id;

    public Attribution Attribution => feed.Attribution;

    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        var (start, outcome, isOfOnePlace) = (Stopwatch.GetTimestamp(), FetchWords.Failed, false);
        try
        {
            var answer = await feed.FetchAsync(place, known, cancellationToken);
            if (answer is Fetched.Fresh fresh) shares.Answered(fresh.Series);
            (outcome, isOfOnePlace) = (FetchWords.Of(answer), answer is Fetched.Unavailable { OperatorMustAct: true, WholeFeed: false });
            return answer;
        }
        finally
        {
            telemetry.Fetched(Id, outcome, Stopwatch.GetElapsedTime(start));
            ledger.Count(Id, outcome);
            if (!isOfOnePlace && !cancellationToken.IsCancellationRequested) ledger.Last(Id, outcome);
        }
    }
}

/// <summary>The same for the members of an ensemble.</summary>
internal sealed class MeasuredEnsemble(IEnsembleFeed feed, Telemetry telemetry, FeedLedger ledger) : IEnsembleFeed
{
    public string Id => feed.Id;

    public Attribution Attribution => feed.Attribution;

    public async Task<FetchedMembers> FetchMembersAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        var (start, outcome) = (Stopwatch.GetTimestamp(), FetchWords.Failed);
        try
        {
            var answer = await feed.FetchMembersAsync(place, known, cancellationToken);
            outcome = FetchWords.Of(answer);
            return answer;
        }
        finally
        {
            telemetry.Fetched(Id, outcome, Stopwatch.GetElapsedTime(start));
            ledger.Count(Id, outcome);
        }
    }
}

/// <summary>What came of a fetch, in the words of the labels.</summary>
internal static class FetchWords
{
    public const string Failed = "failed";

    private const string Fresh = "fresh";
    private const string Unchanged = "unchanged";
    private const string Refused = "refused";
    private const string Unavailable = "unavailable";

    public static readonly IReadOnlyList<string> All = [Fresh, Unchanged, Refused, Unavailable, Failed];

    public static bool IsAnswer(string outcome) => outcome is Fresh or Unchanged;

    public static string Of(Fetched answer) => answer switch
    {
        Weather.Feeds.Fetched.Fresh => Fresh,
        Weather.Feeds.Fetched.Unchanged => Unchanged,
        Weather.Feeds.Fetched.Unavailable none => Of(none),
        _ => Failed,
    };

    public static string Of(FetchedMembers answer) => answer switch
    {
        FetchedMembers.Fresh => Fresh,
        FetchedMembers.Unchanged => Unchanged,
        FetchedMembers.Unavailable none => Of(none.Reason),
        _ => Failed,
    };

    // An operator must act on the one, and may wait out the other.
    private static string Of(Fetched.Unavailable none) => none.OperatorMustAct ? Refused : Unavailable;
}
