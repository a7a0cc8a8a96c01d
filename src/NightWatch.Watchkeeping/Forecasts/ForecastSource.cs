using NightWatch.Planning.Chance;
using NightWatch.Store.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>Where a pass gets its forecasts; what the feeds refuse is logged here and is no exception anywhere.</summary>
internal sealed partial class ForecastSource(
    ForecastStore store,
    RainStore rain,
    IFeedHolds holds,
    IEnumerable<IForecastFeed> feeds,
    FeedsOptions options,
    IClock clock,
    ILogger<ForecastSource> log,
    Telemetry telemetry,
    FeedLedger ledger,
    KnownShares known,
    ChancesInUse chances,
    IEnsembleFeed? ensemble = null)
{
    /// <summary>The last four runs give the agreement of runs.</summary>
    public const int EarlierRuns = 3;

    private readonly ForecastFetcher fetcher = new(
        [.. feeds.Select(feed => new MeasuredFeed(feed, telemetry, ledger, known))],
        ensemble is null ? null : new MeasuredEnsemble(ensemble, telemetry, ledger),
        store,
        rain,
        holds,
        clock,
        new FetchRules { StaleFor = Duration.FromHours(options.MostAgeHours) },
        kept =>
        {
            using var timer = telemetry.Begin(Stage.Parse);
            return kept.Read();
        });

    /// <summary>Begins a pass; each feed is asked at most once for each cell in it.</summary>
    public PassForecasts BeginPass(CancellationToken stop) =>
        new(
            fetcher.BeginPass(EarlierRuns, secondOpinion: true, stop),
            () => chances.BookAsync(clock.GetCurrentInstant(), stop),
            Note,
            telemetry);

    /// <summary>The kept answers alone, for a page: no feed is asked, nothing is written.</summary>
    public PassForecasts Read(CancellationToken stop) =>
        new(
            fetcher.BeginReading(EarlierRuns, secondOpinion: true, stop),
            () => chances.BookAsync(clock.GetCurrentInstant(), stop),
            Note,
            telemetry);

    private void Note(FeedNote note)
    {
        if (note.OperatorMustAct) LogOperatorMustAct(note.FeedId, note.Why);
        else LogUnavailable(note.FeedId, note.Why);
    }

    [LoggerMessage(201, LogLevel.Warning, "No new answer from {Feed}: {Why}")]
    private partial void LogUnavailable(string feed, string why);

    [LoggerMessage(202, LogLevel.Error, "{Feed} refuses, and will go on refusing until something is changed here: {Why}")]
    private partial void LogOperatorMustAct(string feed, string why);
}

/// <summary>The forecasts of one pass.</summary>
internal sealed class PassForecasts(ForecastPass pass, Func<Task<ChanceBook>> chances, Action<FeedNote> note, Telemetry telemetry)
{
    private readonly HashSet<FeedNote> noted = [];

    /// <summary>The weather of a place as well as it is known now.</summary>
    public async Task<PlaceWeather> AskAsync(ForecastPlace place)
    {
        using var timer = telemetry.Begin(Stage.Forecast);
        var weather = await pass.WeatherAsync(place);
        foreach (var said in weather.Notes)
        {
            // Once a pass: thousands of places behind one dead feed are one piece of news.
            lock (noted)
            {
                if (!noted.Add(said)) continue;
            }

            note(said);
        }

        return weather;
    }

    /// <summary>The chance by feed and lead.</summary>
    public Task<ChanceBook> BookAsync() => chances();
}
