using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Planning;

/// <summary>A watch with its stored forecast and its site's sky, as the service has them in hand.</summary>
internal sealed record BenchWatch(Watch Watch, ForecastSeries Forecast, SiteSkyGlow Glow);

/// <summary>
/// Invented watches all over the inhabited latitudes: still and moving cameras, with and without heater, all kinds of subject and ground.
/// </summary>
internal static class BenchWatches
{
    private const int Forecasts = 64;

    public static LocalDate First { get; } = new(2026, 4, 12);

    public static Instant Now { get; } = Instant.FromUtc(2026, 4, 12, 6, 0);

    public static IReadOnlyList<BenchWatch> Make(int count)
    {
        var random = new Random(20260412);
        ForecastSeries[] forecasts = [.. Enumerable.Range(0, Forecasts).Select(_ => Forecast(random))];
        var watches = new BenchWatch[count];
        for (var i = 0; i < count; i++)
        {
            var longitude = random.NextDouble() * 360 - 180;
            var site = new Site
            {
                Id = $"site-{i}",
                Name = $"Site {i}",
                Position = new GeoPosition(random.NextDouble() * 120 - 55, longitude, random.Next(0, 2500)),
                Zone = DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15))),
                Ground = (GroundKind)random.Next(5),
            };
            var watch = new Watch
            {
                Id = $"watch-{i}",
                Subscriber = new Subscriber("", $"w{i}@example.org"),
                Site = site,
                Subject = SubjectOf(i),
                Kit = new Kit
                {
                    FocalLengthMm = random.Next(14, 50),
                    DewHeaterW = i % 2 == 0 ? 5 : 0,
                    DewHeaterBatteryWh = i % 4 == 0 ? 40 : null,
                },
                Move =
                    i % 3 == 0
                        ? null
                        : new Move
                        {
                            Start = Somewhere(random),
                            End = Somewhere(random),
                            EaseIn = 0.1,
                            EaseOut = 0.1,
                            RailM = 1,
                        },
            };
            watches[i] = new BenchWatch(watch, forecasts[i % Forecasts], SiteSkyGlow.Of(site.Position, i % 5 == 0 ? 21.5 : null));
        }

        return watches;
    }

    private static Subject SubjectOf(int i) => (i % 8) switch
    {
        0 => new Subject.GalacticBand(80),
        1 => new Subject.Stars(),
        _ => new Subject.GalacticCore(),
    };

    private static Heading Somewhere(Random random) => new(random.Next(60, 300), random.Next(10, 60));

    private static ForecastSeries Forecast(Random random)
    {
        var builder = new ForecastSeriesBuilder();
        var start = Now - Duration.FromHours(3);
        var (cloud, air, wet) = (random.NextDouble() * 0.5, random.NextDouble() * 25 - 5, random.NextDouble() < 0.3);
        for (var hour = 0; hour < 200; hour++)
        {
            var at = start + Duration.FromHours(hour);
            var end = at + Duration.FromHours(1);
            builder
                .Add(InstantQuantity.CloudAreaFraction, at, Math.Clamp(cloud + 0.3 * Math.Sin(hour / 9.0), 0, 1))
                .Add(InstantQuantity.LowCloudAreaFraction, at, cloud / 2)
                .Add(InstantQuantity.MediumCloudAreaFraction, at, cloud / 3)
                .Add(InstantQuantity.HighCloudAreaFraction, at, cloud / 3)
                .Add(InstantQuantity.AirTemperatureC, at, air + 5 * Math.Sin(hour * Math.PI / 12))
                .Add(InstantQuantity.DewPointC, at, air - 3)
                .Add(InstantQuantity.RelativeHumidity, at, 0.7)
                .Add(InstantQuantity.WindMps, at, 2 + random.NextDouble())
                .Add(InstantQuantity.FogAreaFraction, at, 0)
                .Add(PeriodQuantity.PrecipitationMm, at, end, wet && hour % 30 < 3 ? 0.4 : 0)
                .Add(PeriodQuantity.PrecipitationProbability, at, end, 0.1)
                .Add(PeriodQuantity.GustMps, at, end, 5)
                .Add(PeriodQuantity.ThunderProbability, at, end, 0);
        }

        return builder.Build(
            "bench",
            "made-up",
            start,
            start,
            new Attribution("Invented", new Uri("https://example.org/"), "none"),
            new ForecastCell(0, 0, null));
    }
}
