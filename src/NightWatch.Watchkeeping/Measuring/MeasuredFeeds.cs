using System.Diagnostics;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;

namespace NightWatch.Watchkeeping.Measuring;

/// <summary>A feed that is timed from outside, its answer untouched.</summary>
internal sealed class MeasuredFeed(IForecastFeed feed, Telemetry telemetry) : IForecastFeed
{
    public string Id => feed.Id;

    public Attribution Attribution => feed.Attribution;

    public async Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        var (start, outcome) = (Stopwatch.GetTimestamp(), "failed");
        try
        {
            var answer = await feed.FetchAsync(place, known, cancellationToken);
            outcome = FetchWords.Of(answer);
            return answer;
        }
        finally
        {
            telemetry.Fetched(Id, outcome, Stopwatch.GetElapsedTime(start));
        }
    }
}

/// <summary>The same for the members of an ensemble.</summary>
internal sealed class MeasuredEnsemble(IEnsembleFeed feed, Telemetry telemetry) : IEnsembleFeed
{
    public string Id => feed.Id;

    public Attribution Attribution => feed.Attribution;

    public async Task<FetchedMembers> FetchMembersAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
    {
        var (start, outcome) = (Stopwatch.GetTimestamp(), "failed");
        try
        {
            var answer = await feed.FetchMembersAsync(place, known, cancellationToken);
            outcome = FetchWords.Of(answer);
            return answer;
        }
        finally
        {
            telemetry.Fetched(Id, outcome, Stopwatch.GetElapsedTime(start));
        }
    }
}

/// <summary>What came of a fetch, in the words of the labels.</summary>
internal static class FetchWords
{
    public static string Of(Fetched answer) => answer switch
    {
        Weather.Feeds.Fetched.Fresh => "fresh",
        Weather.Feeds.Fetched.Unchanged => "unchanged",
        Weather.Feeds.Fetched.Unavailable none => Of(none),
        _ => "failed",
    };

    public static string Of(FetchedMembers answer) => answer switch
    {
        FetchedMembers.Fresh => "fresh",
        FetchedMembers.Unchanged => "unchanged",
        FetchedMembers.Unavailable none => Of(none.Reason),
        _ => "failed",
    };

    // An operator must act on the one, and may wait out the other.
    private static string Of(Fetched.Unavailable none) => none.OperatorMustAct ? "refused" : "unavailable";
}
