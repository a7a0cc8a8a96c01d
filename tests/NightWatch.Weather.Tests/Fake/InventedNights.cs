using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Tests.Fake;

/// <summary>Nights from 20 to 04 h at a place, in one year of several worlds other than those that the climates were fitted in.</summary>
internal sealed record InventedNights(ClimateKind Kind, ForecastPlace Place, double ZoneH)
{
    private const int Nights = 365;
    private static readonly int[] seeds = [101, 102, 103, 104, 105, 106];
    private static readonly Instant start = Instant.FromUtc(2033, 1, 1, 0, 0);

    /// <summary>What each night was like, by a view of it.</summary>
    /// <param name="view">The world, the instant, and 15:00 of the night's own day.</param>
    /// <param name="of">What is made of a night's hours.</param>
    public double[] Of(Func<FakeWeather, Instant, Instant, WeatherState> view, Func<WeatherState[], double> of) =>
    [
        .. from seed in seeds
           let world = new FakeWeather(seed, Kind)
           from day in Enumerable.Range(0, Nights)
           let midnight = start + Duration.FromHours(24 * day - ZoneH)
           select of([.. Enumerable.Range(0, StationFigures.Hours).Select(hour =>
               view(world, midnight + Duration.FromHours(20.5 + hour), midnight + Duration.FromHours(15)))]),
    ];

    public double[] Cloud() => Of((world, at, _) => world.At(Place, at), MeanCloud);

    /// <summary>As forecast by the run known at 15:00 so many days before.</summary>
    public double[] Forecast(int lead, int member = 0) =>
        Of((world, at, look) => world.Forecast(Place, at, FakeForecastRun.NewestAt(look - Duration.FromDays(lead)), member), MeanCloud);

    public static double MeanCloud(WeatherState[] hours) => hours.Average(state => state.Cloud);
}
