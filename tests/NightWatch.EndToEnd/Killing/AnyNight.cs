using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.EndToEnd.Killing;

/// <summary>Watches for which any night with known weather is a go, on the equator, where every date has a night.</summary>
internal static class AnyNight
{
    private static readonly Threshold Never = new(1000, 1001);

    private static readonly Site LakeShore = new()
    {
        Id = "lake-shore",
        Name = "Lake Shore",
        Position = new GeoPosition(-0.05, 34.1, 1140),
        Zone = DateTimeZoneProviders.Tzdb["Africa/Nairobi"],
        Ground = GroundKind.Rock,
    };

    public static Watch Watch(int number, int subscriber) =>
        new()
        {
            Id = $"any-night-{number}",
            Subscriber = new("Moraa Achieng", $"moraa{subscriber}@example.org"),
            Site = LakeShore,
            Subject = new Subject.Stars(),
            Kit = new Kit
            {
                DewHeaterW = 8,
                CardGb = 4000,
                BatteriesWh = [5000],
            },
            Limits = new Limits
            {
                UsableRunMin = 5,
                ForecastAgeH = 0,
                Cloud = Never,
                PrecipitationMmPerH = 1000,
                PrecipitationProbability = Never,
                GustMps = Never,
                Fog = Never,
                FogVisibilityM = 0,
                Thunder = Never,
                DarkFullMag = 14,
                DarkNothingMag = 14,
                DewMarginC = -1000,
                SkyShareMost = 1000,
            },
            Outing = new Outing { DrivesPerLostNight = 10 },
            Letters = new LetterSettings
            {
                LeadNights = 1,
                QuietFrom = new LocalTime(0, 0),
                QuietUntil = new LocalTime(0, 0),
                MarginalOutlookProbability = 0,
            },
        };
}
