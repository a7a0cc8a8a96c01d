using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>
/// An invented photographer on the Murray, with two places in Victoria and one across the border in South Australia, half an hour
/// behind; the core stands high all night. Real geography, invented nicknames.
/// </summary>
internal static class Cast
{
    /// <summary>Five days after a full Moon, in the season of the core.</summary>
    public static readonly LocalDate FirstDay = new(2027, 5, 25);

    private static readonly Subscriber Photographer = new("Marlo Quist", "marlo.quist@example.org");
    private static readonly DateTimeZone Victoria = DateTimeZoneProviders.Tzdb["Australia/Melbourne"];
    private static readonly DateTimeZone SouthAustralia = DateTimeZoneProviders.Tzdb["Australia/Adelaide"];
    private static readonly GeoPosition Home = new(-34.19, 142.16, 50);

    /// <summary>The watches.</summary>
    public static IReadOnlyList<Watch> Watches { get; } =
    [
        Make("pink-flat", "The Pink Flat", new GeoPosition(-35.05, 141.72, 45), Victoria, GroundKind.Clay, 95,
            [new(60, 1), new(110, 0.5), new(250, 0.5)],
            "The track over the lake bed is for dry weather only; ask at the ranger's hut."),
        Make("drowned-gums", "The Drowned Gums", new GeoPosition(-34.74, 142.34, 50), Victoria, GroundKind.Sand, 60,
            [new(80, 3), new(140, 4), new(200, 2)],
            "Public camping ground; no lights after ten, keep the boom gate shut."),
        Make("river-cliffs", "The River Cliffs", new GeoPosition(-34.02, 140.86, 60), SouthAustralia, GroundKind.Rock, 115,
            [new(70, 0.5), new(160, 1), new(240, 2)],
            "Stay ten metres from the edge: it undercuts. No fruit over the border."),
    ];

    private static Watch Make(
        string id,
        string name,
        GeoPosition at,
        DateTimeZone zone,
        GroundKind ground,
        double driveMin,
        HorizonPoint[] skyline,
        string access) =>
        new()
        {
            Id = id,
            Subscriber = Photographer,
            Site = new Site
            {
                Id = id,
                Name = name,
                Position = at,
                Zone = zone,
                Horizon = new HorizonProfile(skyline),
                MeasuredSkyBrightness = 21.8,
                Ground = ground,
                AccessNotes = access,
            },
            Kit = new Kit
            {
                DewHeaterW = 6,
                DewHeaterBatteryWh = 74,
                BatteriesWh = [99, 99],
                CardGb = 256,
            },
            Limits = new Limits { MinAltitudeDeg = 15, UsableRunMin = 120 },
            Outing = new Outing
            {
                FreeEvenings = [IsoDayOfWeek.Wednesday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday],
                DriveMin = driveMin,
                SetUpMin = 60,
                MostDriveKm = 200,
                HomeLatitudeDeg = Home.LatitudeDeg,
                HomeLongitudeDeg = Home.LongitudeDeg,
            },
            Letters = new LetterSettings { LeadNights = 3 },
        };
}
