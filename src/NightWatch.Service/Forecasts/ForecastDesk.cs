using System.Collections.Concurrent;
using NightWatch.Service.Settings;
using NightWatch.Store.Forecasts;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Service.Forecasts;

/// <summary>
/// Gets forecasts: asks a feed only where the stored answer has expired, stores what came, and falls back on the stored answer, then
/// on the next feed, when one does not answer. It never throws for what a feed does.
/// </summary>
internal sealed partial class ForecastDesk(ForecastStore store, FeedSet feeds, FeedsOptions options, IClock clock, ILogger<ForecastDesk> log)
{
    private const int RunsForAgreement = 4;
    private readonly ConcurrentDictionary<(string Feed, string Cell), Instant> notBefore = new();
    private readonly ReadForecasts read = new();

    /// <summary>The weather of a place as well as it is known now.</summary>
    public async Task<ForecastAnswer> AskAsync(ForecastPlace place, CancellationToken cancellationToken)
    {
        var answer = ForecastAnswer.None;
        foreach (var line in feeds.Lines)
        {
            var runs = await RunsAsync(line, place, cancellationToken);
            if (runs.Count == 0) continue;
            if (answer.Series is null)
            {
                answer = answer with { Series = runs[0].Series, EarlierRuns = [.. runs.Skip(1).Select(run => run.Series)], StoredIds = [.. runs.Select(run => run.Id)] };
                continue;
            }

            return answer with { SecondOpinion = runs[0].Series, StoredIds = [.. answer.StoredIds, runs[0].Id] };
        }

        return answer;
    }

    /// <summary>The newest runs of one feed, newest first; empty when it has nothing young enough.</summary>
    private async Task<IReadOnlyList<(long Id, ForecastSeries Series)>> RunsAsync(FeedLine line, ForecastPlace place, CancellationToken cancellationToken)
    {
        var cell = ForecastStore.CellOf(place);
        await RefreshAsync(line, place, cell, cancellationToken);
        var oldest = clock.GetCurrentInstant() - Duration.FromHours(options.MostAgeHours);
        var stored = await store.RunsAsync(line.Feed.Id, cell, RunsForAgreement, cancellationToken);
        var runs = new List<(long, ForecastSeries)>();
        foreach (var run in stored)
        {
            if (runs.Count == 0 && run.Body.RetrievedAt < oldest) return [];
            try
            {
                runs.Add((run.Id, read.GetOrRead(run, line.Reader)));
            }
            catch (ForecastFormatException broken)
            {
                LogBroken(run.Id, line.Feed.Id, broken.Message);
            }
        }

        return runs;
    }

    private async Task RefreshAsync(FeedLine line, ForecastPlace place, string cell, CancellationToken cancellationToken)
    {
        var now = clock.GetCurrentInstant();
        var last = await store.LastAsync(line.Feed.Id, cell, cancellationToken);
        if (last?.Body.Expires > now) return;
        if (notBefore.TryGetValue((line.Feed.Id, cell), out var until) && now < until) return;
        switch (await line.Feed.FetchAsync(place, last?.Body, cancellationToken))
        {
            case Fetched.Fresh fresh:
                await store.AddAsync(line.Feed.Id, cell, fresh.Body, fresh.Series.IssuedAt, cancellationToken);
                break;
            case Fetched.Unchanged unchanged when last is not null:
                await store.ConfirmAsync(last.Id, unchanged.Expires, now, cancellationToken);
                break;
            case Fetched.Unavailable unavailable:
                if (unavailable.AskAgainAfter is { } wait) notBefore[(line.Feed.Id, cell)] = now + wait;
                if (unavailable.OperatorMustAct) LogOperatorMustAct(line.Feed.Id, cell, unavailable.Why);
                else LogUnavailable(line.Feed.Id, cell, unavailable.Why);
                break;
        }
    }

    [LoggerMessage(201, LogLevel.Warning, "No answer from {Feed} for {Cell}: {Why}")]
    private partial void LogUnavailable(string feed, string cell, string why);

    [LoggerMessage(202, LogLevel.Error, "{Feed} refuses {Cell} and will go on refusing until something is changed here: {Why}")]
    private partial void LogOperatorMustAct(string feed, string cell, string why);

    [LoggerMessage(203, LogLevel.Warning, "Stored answer {Id} of {Feed} cannot be read: {Why}")]
    private partial void LogBroken(long id, string feed, string why);
}

/// <summary>The forecasts of one pass: each place is asked for once.</summary>
internal sealed class PassForecasts(ForecastDesk desk)
{
    private readonly ConcurrentDictionary<string, Lazy<Task<ForecastAnswer>>> asked = new();

    public Task<ForecastAnswer> AskAsync(ForecastPlace place, CancellationToken cancellationToken) =>
        asked.GetOrAdd(ForecastStore.CellOf(place), _ => new(() => desk.AskAsync(place, cancellationToken))).Value;
}
