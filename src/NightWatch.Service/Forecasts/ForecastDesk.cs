using System.Collections.Concurrent;
using NightWatch.Service.Settings;
using NightWatch.Store.Forecasts;
using NightWatch.Weather;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Service.Forecasts;

/// <summary>
/// Gets forecasts: asks a feed only where the stored answer has expired, stores what came, and falls back on the stored answer, then
/// on the next feed, when one does not answer. It never throws for what a feed does.
/// </summary>
internal sealed partial class ForecastDesk(
    ForecastStore store, IEnumerable<IForecastFeed> feeds, FeedsOptions options, IClock clock, ILogger<ForecastDesk> log, IEnsembleFeed? ensemble = null)
{
    private const int RunsForAgreement = 4;
    private readonly ConcurrentDictionary<(string Feed, string Cell), Instant> notBefore = new();
    private readonly ReadForecasts<ForecastSeries> read = new();
    private readonly ReadForecasts<IReadOnlyList<ForecastSeries>> readMembers = new();

    /// <summary>The weather of a place as well as it is known now.</summary>
    public async Task<ForecastAnswer> AskAsync(ForecastPlace place, CancellationToken cancellationToken)
    {
        var answer = ForecastAnswer.None;
        foreach (var feed in feeds)
        {
            var runs = await RunsAsync(feed, place, cancellationToken);
            if (runs.Count == 0) continue;
            if (answer.Series is not null)
            {
                answer = answer with { SecondOpinion = runs[0].Series, StoredIds = [.. answer.StoredIds, runs[0].Id] };
                break;
            }

            answer = answer with { Series = runs[0].Series, EarlierRuns = [.. runs.Skip(1).Select(run => run.Series)], StoredIds = [.. runs.Select(run => run.Id)] };
        }

        return await MembersAsync(place, cancellationToken) is var (id, members) ? answer with { Members = members, StoredIds = [.. answer.StoredIds, id] } : answer;
    }

    /// <summary>The newest runs of one feed, newest first; empty when it has nothing young enough.</summary>
    private async Task<IReadOnlyList<(long Id, ForecastSeries Series)>> RunsAsync(IForecastFeed feed, ForecastPlace place, CancellationToken cancellationToken)
    {
        var cell = ForecastStore.CellOf(place);
        await RefreshAsync(feed.Id, cell, async known => Answer.Of(await feed.FetchAsync(place, known, cancellationToken)), cancellationToken);
        var stored = await store.RunsAsync(feed.Id, cell, RunsForAgreement, cancellationToken);
        if (stored.Count == 0 || IsTooOld(stored[0])) return [];
        var runs = new List<(long, ForecastSeries)>();
        var reader = ForecastReaders.For(feed.Id);
        foreach (var run in stored)
        {
            if (Read(run, feed.Id, read, reader.Read) is { } series) runs.Add((run.Id, series));
        }

        return runs;
    }

    private async Task<(long Id, IReadOnlyList<ForecastSeries> Members)?> MembersAsync(ForecastPlace place, CancellationToken cancellationToken)
    {
        if (ensemble is null) return null;
        // A feed may be both; its members must not be taken for its runs.
        var (id, cell) = (ensemble.Id + "/members", ForecastStore.CellOf(place));
        await RefreshAsync(id, cell, async known => Answer.Of(await ensemble.FetchMembersAsync(place, known, cancellationToken)), cancellationToken);
        var last = await store.LastAsync(id, cell, cancellationToken);
        if (last is null || IsTooOld(last)) return null;
        var reader = ForecastReaders.ForEnsemble(ensemble.Id);
        return Read(last, id, readMembers, (body, at) => reader.ReadMembers(body, at)) is { Count: > 0 } members ? (last.Id, members) : null;
    }

    private bool IsTooOld(StoredForecast stored) => stored.Body.RetrievedAt < clock.GetCurrentInstant() - Duration.FromHours(options.MostAgeHours);

    private async Task RefreshAsync(string id, string cell, Func<FetchedBody?, Task<Answer>> fetch, CancellationToken cancellationToken)
    {
        var now = clock.GetCurrentInstant();
        var last = await store.LastAsync(id, cell, cancellationToken);
        if (last?.Body.Expires > now) return;
        if (notBefore.TryGetValue((id, cell), out var until) && now < until) return;
        var answer = await fetch(last?.Body);
        if (answer.Body is { } body)
        {
            await store.AddAsync(id, cell, body, answer.IssuedAt, cancellationToken);
        }
        else if (answer.Trouble is { } trouble)
        {
            if (trouble.AskAgainAfter is { } wait) notBefore[(id, cell)] = now + wait;
            if (trouble.OperatorMustAct) LogOperatorMustAct(id, cell, trouble.Why);
            else LogUnavailable(id, cell, trouble.Why);
        }
        else if (last is not null)
        {
            await store.ConfirmAsync(last.Id, answer.Expires, now, cancellationToken);
        }
    }

    private T? Read<T>(StoredForecast stored, string id, ReadForecasts<T> known, Func<ReadOnlyMemory<byte>, Instant, T> reader)
        where T : class
    {
        try
        {
            return known.GetOrRead(stored, reader);
        }
        catch (ForecastFormatException broken)
        {
            LogBroken(stored.Id, id, broken.Message);
            return null;
        }
    }

    [LoggerMessage(201, LogLevel.Warning, "No answer from {Feed} for {Cell}: {Why}")]
    private partial void LogUnavailable(string feed, string cell, string why);

    [LoggerMessage(202, LogLevel.Error, "{Feed} refuses {Cell} and will go on refusing until something is changed here: {Why}")]
    private partial void LogOperatorMustAct(string feed, string cell, string why);

    [LoggerMessage(203, LogLevel.Warning, "Stored answer {Id} of {Feed} cannot be read: {Why}")]
    private partial void LogBroken(long id, string feed, string why);

    /// <summary>What a feed or an ensemble said, in one shape: a new body, trouble, or neither (the known answer still holds).</summary>
    private readonly record struct Answer(FetchedBody? Body, Instant? IssuedAt, Instant? Expires, Fetched.Unavailable? Trouble)
    {
        public static Answer Of(Fetched fetched) => fetched switch
        {
            Fetched.Fresh fresh => new(fresh.Body, fresh.Series.IssuedAt, null, null),
            Fetched.Unavailable trouble => new(null, null, null, trouble),
            Fetched.Unchanged same => new(null, null, same.Expires, null),
            _ => throw new InvalidOperationException("A fetch ends in one of its three outcomes."),
        };

        public static Answer Of(FetchedMembers fetched) => fetched switch
        {
            FetchedMembers.Fresh fresh => new(fresh.Body, fresh.Members.IsEmpty ? null : fresh.Members[0].IssuedAt, null, null),
            FetchedMembers.Unavailable trouble => new(null, null, null, trouble.Reason),
            FetchedMembers.Unchanged same => new(null, null, same.Expires, null),
            _ => throw new InvalidOperationException("A fetch ends in one of its three outcomes."),
        };
    }
}
