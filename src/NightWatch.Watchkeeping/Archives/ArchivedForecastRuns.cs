using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The runs of an archive as a look of the service has them: none later than the look. Safe to use from many threads.</summary>
/// <param name="runs">Ascending by the time of issue.</param>
internal sealed class ArchivedForecastRuns(IReadOnlyList<ForecastSeries> runs)
{
    /// <summary>As many of the last answers as a pass reads to find runs of their own.</summary>
    private const int LastAnswers = 1 + 2 * ForecastSource.EarlierRuns;

    private static readonly FetchRules rules = new();

    private readonly Instant[] issued = [.. runs.Select(run => run.IssuedAt!.Value)];
    private readonly IReadOnlyList<RainEntry>[] rain = [.. runs.Select(RainLedger.Entries)];

    /// <summary>What was known at an instant: the newest run, the earlier ones, the rain that runs shortly before spoke of.</summary>
    /// <remarks>Without a run that is young enough for the service to tell of it, the weather is unknown.</remarks>
    public PlaceWeather KnownAt(Instant at)
    {
        var count = CountUntil(at);
        var answers = Enumerable.Range(Math.Max(0, count - LastAnswers), Math.Min(count, LastAnswers)).Select(i => runs[i]);
        var known = rules.Distinct(answers, 1 + ForecastSource.EarlierRuns);
        if (known.IsEmpty || rules.Judge(known[0].RetrievedAt, known[0].IssuedAt, at) == Freshness.TooOld) return PlaceWeather.Unknown;
        return new PlaceWeather
        {
            Newest = known[0],
            EarlierRuns = [.. known.Skip(1)],
            Rain = [.. RainLedger.Merge(rain[CountUntil(at - RainLedger.LongestPast)..count].SelectMany(entries => entries))],
        };
    }

    /// <summary>How many runs were issued at or before an instant.</summary>
    private int CountUntil(Instant at)
    {
        var found = Array.BinarySearch(issued, at);
        return found < 0 ? ~found : found + 1;
    }
}
