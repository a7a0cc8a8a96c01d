using NightWatch.Store.Forecasts;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>The store as the fetcher sees it.</summary>
internal sealed class StoredAnswers(ForecastStore store) : IForecastArchive
{
    public async Task<IReadOnlyList<ArchivedForecast>> RunsAsync(string feedId, string cell, int take, CancellationToken cancellationToken) =>
        [.. (await store.RunsAsync(feedId, cell, take, cancellationToken)).Select(run => new ArchivedForecast(run.Id, run.Body))];

    public Task<long> AddAsync(string feedId, string cell, FetchedBody body, Instant? issuedAt, CancellationToken cancellationToken) =>
        store.AddAsync(feedId, cell, body, issuedAt, cancellationToken);

    public Task ConfirmAsync(long id, Instant? expires, Instant at, CancellationToken cancellationToken) => store.ConfirmAsync(id, expires, at, cancellationToken);
}
