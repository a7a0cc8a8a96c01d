using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fake;

/// <summary>
/// A run of the fake feed at once as a series, for the hours that are wanted: what its body would be read as, many times faster.
/// </summary>
public static class FakeForecastRun
{
    private static readonly FakeReader reader = new();
    private static readonly (ImmutableArray<int> Stamps, ImmutableArray<(int Start, int End)> Periods) wholeRun = FakeBody.Layout(
        FakeBody.PastHours);
    private static readonly (ImmutableArray<int> Stamps, ImmutableArray<(int Start, int End)> Periods) ofMember = FakeBody.Layout(0);

    /// <summary>From run to run.</summary>
    public static Duration Every => FakeFeed.RunEvery;

    /// <summary>When the newest run that is out at an instant was issued.</summary>
    public static Instant NewestAt(Instant now) => FakeFeed.NewestRunAt(now);

    /// <summary>The run that the feed would answer with.</summary>
    /// <param name="weather">The world.</param>
    /// <param name="place">The place.</param>
    /// <param name="now">When it is asked.</param>
    /// <param name="wanted">Everything that bears on these hours; hours outside are left out, and so unknown.</param>
    /// <param name="member">A member of its ensemble, from 0; null for the run itself.</param>
    public static ForecastSeries Of(FakeWeather weather, ForecastPlace place, Instant now, Interval wanted, int? member = null)
    {
        var issuedAt = FakeFeed.NewestRunAt(now);
        var (stamps, periods) = member is null ? wholeRun : ofMember;
        WeatherState At(Instant at) => weather.Forecast(place, at, issuedAt, member ?? 0);
        Instant Of(int hour) => issuedAt + Duration.FromHours(hour);

        var builder = new ForecastSeriesBuilder();
        for (var i = 0; i < stamps.Length; i++)
        {
            // The value before and the one after bear on the edge, and the one after that tells a step of the feed's from a hole.
            if (i + 1 < stamps.Length && Of(stamps[i + 1]) <= wanted.Start) continue;
            if (i > 1 && Of(stamps[i - 2]) >= wanted.End) break;
            var state = At(Of(stamps[i]));
            foreach (var (quantity, of) in FakeBody.InstantValues) builder.Add(quantity, Of(stamps[i]), FakeBody.Written(of(state)));
        }

        foreach (var (start, end) in periods)
        {
            if (Of(end) <= wanted.Start) continue;
            if (Of(start) >= wanted.End) break;
            var hours = new WeatherState[end - start];
            for (var hour = start; hour < end; hour++) hours[hour - start] = At(Of(hour) + FakeBody.HalfHour);
            foreach (var (quantity, of) in FakeBody.PeriodValues) builder.Add(quantity, Of(start), Of(end), FakeBody.Written(of(hours)));
        }

        return builder.Build(
            reader.FeedId,
            "fake",
            issuedAt,
            now,
            FakeReader.Attribution,
            new ForecastCell(place.LatitudeDeg, place.LongitudeDeg, place.ElevationM),
            member);
    }
}
