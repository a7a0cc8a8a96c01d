using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.HandMade;

/// <summary>A night under the real sky of a place, planned on its morning, with invented weather that stays as it is.</summary>
/// <param name="LatitudeDeg">Of the site.</param>
/// <param name="LongitudeDeg">Of the site.</param>
/// <param name="Zone">Its time zone's name.</param>
/// <param name="Date">Of the evening.</param>
internal sealed record RealNight(double LatitudeDeg, double LongitudeDeg, string Zone, LocalDate Date)
{
    public Subject Subject { get; init; } = new Subject.GalacticCore();

    public double? MeasuredMag { get; init; }

    public double ElevationM { get; init; } = 300;

    public double Cloud { get; init; } = 0.02;

    public double Gust { get; init; } = 3;

    public double UsableRunMin { get; init; } = 90;

    public string Id { get; init; } = "any";

    public NightPlan Plan()
    {
        var zone = DateTimeZoneProviders.Tzdb[Zone];
        var noon = zone.AtLeniently(Date.At(LocalTime.Noon)).ToInstant();
        var weather = new HourlyWeather { Cloud = All(Cloud), Gust = All(Gust), Wind = All(Gust / 1.6) };
        return NightPlanner.Plan(new NightInputs
        {
            Watch = new Watch
            {
                Id = Id,
                Subscriber = new Subscriber("Ilse", "ilse@example.org"),
                Subject = Subject,
                Kit = new Kit { BatteriesWh = [99, 99, 99], CardGb = 1024 },
                Limits = new Limits { UsableRunMin = UsableRunMin },
                Site = new Site
                {
                    Id = Id,
                    Name = Id,
                    Position = new GeoPosition(LatitudeDeg, LongitudeDeg, ElevationM),
                    Zone = zone,
                    MeasuredSkyBrightness = MeasuredMag,
                },
            },
            Night = Date,
            Now = noon - Duration.FromHours(4),
            Weather = new PlaceWeather { Newest = weather.Series(noon, noon - Duration.FromHours(6)) },
            RainBefore = new RainBefore(0, 72, 72),
        });
    }
}
