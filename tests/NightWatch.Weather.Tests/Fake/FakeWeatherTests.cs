using CsCheck;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Tests.Fake;

/// <summary>
/// What the invented weather must be like so that a rehearsal means something. Bounds are ours; nothing outside is claimed.
/// </summary>
public sealed class FakeWeatherTests
{
    private static readonly ForecastPlace Moor = new(55.1, -4.5, 300);
    private static readonly Instant Start = Instant.FromUtc(2031, 1, 1, 0, 0);

    private static readonly Gen<(long Seed, ForecastPlace Place, Instant At)> Anywhere = Gen.Select(
        Gen.Long, Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[0, 4000], Gen.Double[0, 20 * 8766],
        (seed, lat, lon, m, h) => (seed, new ForecastPlace(lat, lon, m), Start + Duration.FromHours(h)));

    private static Instant Midnight(int day, ForecastPlace place) =>
        Start + Duration.FromDays(day) - Duration.FromHours(place.LongitudeDeg / 15);

    private static double NightCloud(Func<Instant, WeatherState> weather, Instant midnight) =>
        Enumerable.Range(-3, 7).Average(h => weather(midnight + Duration.FromHours(h)).Cloud);

    [Fact]
    public void Every_value_is_possible_everywhere() =>
        Anywhere.Sample(
            x =>
            {
                foreach (
                    var w in new[]
                    {
                        new FakeWeather(x.Seed).At(x.Place, x.At),
                        new FakeWeather(x.Seed).Forecast(x.Place, x.At, x.At - Duration.FromHours(100), 3),
                    })
                {
                    Assert.All(
                        [
                            w.Cloud, w.LowCloud, w.MediumCloud, w.HighCloud, w.Fog, w.RelativeHumidity, w.RainProbability,
                            w.ThunderProbability,
                        ],
                        v => Assert.InRange(v, 0, 1));
                    Assert.True(w.Cloud >= Math.Max(w.LowCloud, Math.Max(w.MediumCloud, w.HighCloud)) - 1e-12);
                    Assert.InRange(w.AirC, -85, 50);
                    Assert.True(w.DewPointC <= w.AirC);
                    Assert.InRange(w.WindMps, 0, 30);
                    Assert.True(w.GustMps >= w.WindMps);
                    Assert.InRange(w.WindFromDeg, 0, 360);
                    Assert.InRange(w.RainMmPerH, 0, 20);
                    Assert.InRange(w.PressureHpa, 950, 1050);
                    Assert.InRange(w.VisibilityM, 0, 50_000);
                }
            },
            iter: 300);

    [Fact]
    public void The_same_seed_makes_the_same_weather_and_another_seed_another()
    {
        var at = Start + Duration.FromHours(1000);

        Assert.Equal(new FakeWeather(5).At(Moor, at), new FakeWeather(5).At(Moor, at));
        Assert.NotEqual(new FakeWeather(5).At(Moor, at), new FakeWeather(6).At(Moor, at));
    }

    [Fact]
    public void A_run_has_no_error_at_its_issue_time() => Anywhere.Sample(x =>
    {
        var weather = new FakeWeather(x.Seed);
        return weather.At(x.Place, x.At) == weather.Forecast(x.Place, x.At, x.At, 4);
    }, iter: 100);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_season_has_clear_nights_and_cloudy_spells(long seed)
    {
        var weather = new FakeWeather(seed);
        var nights = Enumerable.Range(0, 120).Select(day => NightCloud(at => weather.At(Moor, at), Midnight(day, Moor))).ToList();

        Assert.InRange(nights.Count(c => c <= 0.2), 15, 60);
        Assert.InRange(nights.Count(c => c >= 0.45), 40, 95);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Some_nights_turn_during_their_last_day(long seed)
    {
        var weather = new FakeWeather(seed);
        var turned = Enumerable.Range(0, 120).Count(day =>
        {
            var midnight = Midnight(day, Moor);
            var dayBefore = NightCloud(at => weather.Forecast(Moor, at, midnight - Duration.FromHours(24)), midnight);
            var evening = NightCloud(at => weather.Forecast(Moor, at, midnight - Duration.FromHours(6)), midnight);
            return dayBefore <= 0.2 != evening <= 0.2;
        });

        Assert.InRange(turned, 6, 40);
    }

    [Fact]
    public void The_error_grows_with_lead()
    {
        var weather = new FakeWeather(1);
        double Error(int lead) => Enumerable.Range(0, 200).Average(day =>
        {
            var midnight = Midnight(day, Moor);
            return Math.Abs(NightCloud(at => weather.At(Moor, at), midnight)
                - NightCloud(at => weather.Forecast(Moor, at, midnight - Duration.FromHours(lead)), midnight));
        });

        var errors = new[] { 6, 24, 72, 144 }.Select(Error).ToList();

        Assert.Equal(errors.Order(), errors);
        Assert.True(errors[0] < 0.15 && errors[3] > 0.25, string.Join(' ', errors));
    }

    [Fact]
    public void Successive_runs_are_alike()
    {
        var weather = new FakeWeather(1);
        double Distance(int hoursBetween) => Enumerable.Range(0, 150).Average(day =>
        {
            var midnight = Midnight(day, Moor);
            var issued = midnight - Duration.FromHours(60);
            return Math.Abs(NightCloud(at => weather.Forecast(Moor, at, issued), midnight)
                - NightCloud(at => weather.Forecast(Moor, at, issued - Duration.FromHours(hoursBetween)), midnight));
        });

        Assert.True(Distance(6) < Distance(48) / 1.8, $"{Distance(6)} {Distance(48)}");
    }

    [Fact]
    public void Neighbouring_sites_have_much_the_same_night_and_distant_ones_do_not()
    {
        var weather = new FakeWeather(1);
        double Distance(ForecastPlace other) => Enumerable.Range(0, 200).Average(day => Math.Abs(
            NightCloud(at => weather.At(Moor, at), Midnight(day, Moor)) - NightCloud(at => weather.At(other, at), Midnight(day, Moor))));

        var near = Distance(new ForecastPlace(55.4, -4.0, 300));
        var far = Distance(new ForecastPlace(40, 25, 300));

        Assert.True(near < 0.2 && far > 0.3, $"{near} {far}");
    }

    [Fact]
    public void Clear_calm_nights_cool_toward_the_dew_point_and_never_below()
    {
        var weather = new FakeWeather(1);
        var calm = Enumerable
            .Range(0, 365)
            .Select(day =>
                (
                    Evening: weather.At(Moor, Midnight(day, Moor) - Duration.FromHours(6)),
                    Dawn: weather.At(Moor, Midnight(day, Moor) + Duration.FromHours(5))))
            .Where(n => n.Evening.Cloud < 0.1 && n.Dawn.Cloud < 0.1 && n.Dawn.WindMps < 3)
            .ToList();

        Assert.True(calm.Count > 10);
        Assert.True(calm.Average(n => n.Evening.AirC - n.Dawn.AirC) > 3);
        Assert.True(calm.Average(n => n.Dawn.AirC - n.Dawn.DewPointC) < calm.Average(n => n.Evening.AirC - n.Evening.DewPointC) - 2);
    }

    [Fact]
    public void Fog_and_thunder_come_now_and_then()
    {
        var weather = new FakeWeather(1);
        var hours = Enumerable.Range(0, 8766).Select(h => weather.At(Moor, Start + Duration.FromHours(h))).ToList();

        Assert.InRange(hours.Count(w => w.Fog > 0.3), 20, 900);
        Assert.InRange(hours.Count(w => w.ThunderProbability > 0.25), 1, 300);
        Assert.InRange(hours.Sum(w => w.RainMmPerH), 300, 2000);
        Assert.All(hours.Where(w => w.Fog > 0.5), w => Assert.True(w.VisibilityM < 1000));
    }

    [Fact]
    public void Summer_is_warm_on_its_own_side_of_the_equator()
    {
        var weather = new FakeWeather(1);
        double Month(ForecastPlace place, int month) =>
            Enumerable
                .Range(0, 30 * 24)
                .Average(h => weather.At(place, Instant.FromUtc(2031, month, 1, 0, 0) + Duration.FromHours(h)).AirC);

        Assert.True(Month(Moor, 7) > Month(Moor, 1) + 12);
        Assert.True(Month(new ForecastPlace(-43, 147, 100), 1) > Month(new ForecastPlace(-43, 147, 100), 7) + 8);
    }
}
