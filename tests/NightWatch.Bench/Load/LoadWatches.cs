using System.Globalization;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Bench.Load;

/// <summary>
/// Invented watches, the same at every run: all in one time zone, so that every evening pass falls due within the same ten minutes, which
/// is the worst an installation can meet. A subscriber has two watches, at neighbouring sites.
/// </summary>
internal static class LoadWatches
{
    private const int WatchesPerSubscriber = 2;

    public static DateTimeZone Zone { get; } = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    /// <summary>New Moon is on the 8th: nights with a run to judge, not nights that the Moon rules out at once.</summary>
    public static LocalDate Today { get; } = new(2027, 3, 4);

    public static Instant At(int hour, int minute) => Zone.AtStrictly(Today.At(new LocalTime(hour, minute))).ToInstant();

    public static Site SiteOf(int number, int sites)
    {
        var random = new Random(number);
        // Columns from west to east, so that neighbours in number are neighbours on the ground.
        var columns = (int)Math.Sqrt(sites);
        return new Site
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"site-{number:000000}"),
            Name = string.Create(CultureInfo.InvariantCulture, $"Site {number}"),
            Zone = Zone,
            Ground = (GroundKind)random.Next(Enum.GetValues<GroundKind>().Length),
            Position = new GeoPosition(
                36 + 22.0 * (number % columns) / columns + random.NextDouble() * 0.05,
                5 + 14.0 * (number / columns) / (sites / columns + 1) + random.NextDouble() * 0.05,
                random.Next(0, 2500)),
            Horizon = new HorizonProfile([new(60, 2), new(150, 5), new(240, 1)]),
        };
    }

    public static Watch WatchOf(int number, int watches, int sites)
    {
        var subscriber = number / WatchesPerSubscriber;
        var home = (int)((long)subscriber * sites / (watches / WatchesPerSubscriber + 1));
        var site = SiteOf((home + number % WatchesPerSubscriber * 3) % sites, sites);
        return new Watch
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"watch-{number:000000}"),
            Subscriber = new Subscriber("", string.Create(CultureInfo.InvariantCulture, $"s{subscriber}@example.org")),
            Site = site,
            Subject = (number % 8) switch
            {
                0 => new Subject.GalacticBand(80),
                1 or 2 => new Subject.Stars(),
                _ => new Subject.GalacticCore(),
            },
            Move =
                number % 3 == 0
                    ? null
                    : new Move
                    {
                        Start = new(120, 20),
                        End = new(170, 35),
                        EaseIn = 0.1,
                        RailM = 1.2,
                    },
            Kit = new Kit
            {
                FocalLengthMm = 14 + number % 30,
                DewHeaterW = 6,
                DewHeaterBatteryWh = 74,
                BatteriesWh = [99, 99],
                CardGb = 256,
            },
        };
    }
}
