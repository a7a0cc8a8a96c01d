using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
namespace NightWatch.Service.Forecasts;
internal static class ForecastReaders
{
    public static IReadOnlyList<IForecastReader> All { get; } = [new MetNorwayReader(), new FakeReader()];
    public static IForecastReader For(string id) => All.First(r => r.FeedId == id);
}
