using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>
/// An invented photographer of the far west of New South Wales, with three places in two zones (the mining town keeps South Australia's
/// time) and the core high all night. Real geography, invented nicknames.
/// </summary>
internal static class Cast
{
    /// <summary>Five days after a full Moon, in the season of the core.</summary>
    public static readonly LocalDate FirstDay = new(2027, 5, 25);

    private static readonly Subscriber Photographer = new("Marlo Quist", "marlo.quist@example.org");
    private static readonly DateTimeZone TownTime = DateTimeZoneProviders.Tzdb["Australia/Broken_Hill"];
    private static readonly DateTimeZone StateTime = DateTimeZoneProviders.Tzdb["Australia/Sydney"];
    private static readonly GeoPosition Home = new(-31.958, 141.453, 300);

    /// <summary>The watches.</summary>
    public static IReadOnlyList<Watch> Watches { get; } =
    [
        Make("long-fence", "The Long Fence", new GeoPosition(-31.86, 141.22, 190), TownTime, GroundKind.Gravel, 35,
            [new(60, 2), new(110, 1), new(250, 0.5)],
            "Public road reserve; keep the gate as you find it."),
        Make("drowned-trees", "The Drowned Trees", new GeoPosition(-32.36, 142.31, 62), StateTime, GroundKind.Clay, 85,
            [new(90, 1), new(180, 1.5)],
            "Lake shore track is dry-weather only; ask at the ranger's hut."),
        Make("red-gorge", "Red Gorge", new GeoPosition(-31.20, 142.29, 180), StateTime, GroundKind.Rock, 110,
            [new(70, 6), new(120, 9), new(160, 4), new(240, 3)],
            "National park: permit for the night, no fires, tell the ranger when you leave."),
    ];

    private static Watch Make(string id, string name, GeoPosition at, DateTimeZone zone, GroundKind ground, double driveMin, HorizonPoint[] skyline, string access) => new()
    {
        Id = id,
        Subscriber = Photographer,
        Site = new Site
        {
            Id = id, Name = name, Position = at, Zone = zone, Horizon = new HorizonProfile(skyline), MeasuredSkyBrightness = 21.8, Ground = ground, AccessNotes = access,
        },
        Kit = new Kit { DewHeaterW = 6, DewHeaterBatteryWh = 74, BatteriesWh = [99, 99], CardGb = 256 },
        Move = new Move { Start = new Heading(110, 25), End = new Heading(150, 35), EaseIn = 0.1, EaseOut = 0.1, RailM = 1.2 },
        Limits = new Limits { MinAltitudeDeg = 15, UsableRunMin = 120 },
        Outing = new Outing
        {
            FreeEvenings = [IsoDayOfWeek.Wednesday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday],
            DriveMin = driveMin,
            SetUpMin = 60,
            MostDriveKm = 250,
            HomeLatitudeDeg = Home.LatitudeDeg,
            HomeLongitudeDeg = Home.LongitudeDeg,
        },
        Letters = new LetterSettings { LeadNights = 3 },
    };
}
