using System.Collections.Concurrent;
using NightWatch.Store.Forecasts;
using NightWatch.Weather.Feeds;

namespace NightWatch.Service.Forecasts;

/// <summary>The forecasts of one pass: each place is asked for once.</summary>
internal sealed class PassForecasts(ForecastDesk desk)
{
    private readonly ConcurrentDictionary<string, Lazy<Task<ForecastAnswer>>> asked = new();

    public Task<ForecastAnswer> AskAsync(ForecastPlace place, CancellationToken cancellationToken) =>
        asked.GetOrAdd(ForecastStore.CellOf(place), _ => new(() => desk.AskAsync(place, cancellationToken))).Value;
}
