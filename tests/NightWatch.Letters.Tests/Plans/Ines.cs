using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>
/// An invented photographer, Inés Robledo, her two watches in an invented corner of Teruel, and the night her letters tell of.
/// </summary>
internal static class Ines
{
    /// <summary>A Friday, hours after new Moon.</summary>
    public static readonly LocalDate Night = new(2027, 6, 4);

    public static readonly DateTimeZone Madrid = DateTimeZoneProviders.Tzdb["Europe/Madrid"];

    public static Watch CoreWatch { get; } =
        new()
        {
            Id = "threshing-floor-core",
            Subscriber = new Subscriber("Inés Robledo", "ines@robledo.example"),
            Site = new Site
            {
                Id = "threshing-floor",
                Name = "The threshing floor",
                Position = new GeoPosition(40.4, -0.93, 1340),
                Zone = Madrid,
                AccessNotes = "Gravel track from the chapel; park below the wall, not on the stubble.",
            },
            Kit = new Kit { DewHeaterW = 3, BatteriesWh = [40, 40] },
            Outing = new Outing
            {
                DriveMin = 70,
                SetUpMin = 75,
                FreeEvenings = [IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday],
            },
        };

    public static Watch SaltShelf { get; } = CoreWatch with
    {
        Id = "salt-shelf-core",
        Site = new Site { Id = "salt-shelf", Name = "Salt shelf", Position = new GeoPosition(40.9, -0.3, 870), Zone = Madrid },
    };

    /// <summary>The site's clock, days from the evening of <see cref="Night"/>.</summary>
    public static Instant At(int hour, int minute = 0, int dayOffset = 0) => Local(Night.PlusDays(dayOffset), hour, minute, Madrid);

    public static Instant Local(LocalDate date, int hour, int minute, DateTimeZone zone) =>
        (date + new LocalTime(hour, minute)).InZoneLeniently(zone).ToInstant();
}
