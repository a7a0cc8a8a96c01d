using NightWatch.Planning.Nights;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>
/// A hand-made night sky over Teruel province, Spain, early June: new Moon, core culminating at two. The curves are plain spherical
/// trigonometry with fixed declinations, good enough to look at; nothing here checks astronomy.
/// </summary>
internal static class TestSky
{
    public const double LatitudeDeg = 40.4;

    public static readonly DateTimeZone Madrid = DateTimeZoneProviders.Tzdb["Europe/Madrid"];

    public static Instant Local(LocalDate date, int hour, int minute = 0, DateTimeZone? zone = null) =>
        (date + new LocalTime(hour, minute)).InZoneLeniently(zone ?? Madrid).ToInstant();

    public static NightSky Of(LocalDate night, DateTimeZone? zone = null)
    {
        var tz = zone ?? Madrid;
        var next = night.PlusDays(1);
        Instant Evening(int h, int m) => Local(night, h, m, tz);
        Instant Morning(int h, int m) => Local(next, h, m, tz);
        var dark = new Interval(Evening(23, 42), Morning(4, 31));
        var subject = new Interval(Evening(23, 55), Morning(4, 50));
        return new NightSky
        {
            Night = night,
            Zone = tz,
            Span = new Interval(Local(night, 12, 0, tz), Local(next, 12, 0, tz)),
            Sun = new SunEvents(
                SunState.Normal, Evening(21, 34), Evening(22, 6), Evening(22, 49), Evening(23, 42),
                Morning(4, 31), Morning(5, 24), Morning(6, 7), Morning(6, 39), Morning(2, 7)),
            Moon = new MoonEvents([Morning(6, 20)], [Evening(20, 58)], 0.02, -29, 12),
            Subject = new SubjectEvents(SubjectState.Normal, Evening(22, 40), Morning(5, 58), Morning(2, 19), 20.6),
            DarkWindows = [dark],
            SubjectWindows = [subject],
            ShootingWindows = [new Interval(subject.Start, dark.End)],
            AstronomicalNight = [dark],
        };
    }

    /// <summary>The grid from sunset to sunrise; weather comes on top.</summary>
    public static IEnumerable<ConditionStep> Steps(LocalDate night, DateTimeZone? zone = null, double moonTransitHoursFromMidnight = -11.3)
    {
        var sky = Of(night, zone);
        var from = sky.Sun.Set!.Value;
        var until = sky.Sun.Rise!.Value;
        for (var at = from; at <= until; at += Duration.FromMinutes(5))
        {
            var hours = (at - sky.Sun.Midnight).TotalHours;
            yield return new ConditionStep
            {
                At = at,
                SunAltitudeDeg = Direction(hours - 12, 22.4).AltitudeDeg,
                Moon = Direction(hours - moonTransitHoursFromMidnight, 21),
                Subject = Direction((at - sky.Subject.Transit!.Value).TotalHours, -29),
            };
        }
    }

    private static Horizontal Direction(double hourAngleH, double declinationDeg)
    {
        var h = hourAngleH * 15 * Math.PI / 180;
        var d = declinationDeg * Math.PI / 180;
        const double Phi = LatitudeDeg * Math.PI / 180;
        var altitude = Math.Asin(Math.Sin(Phi) * Math.Sin(d) + Math.Cos(Phi) * Math.Cos(d) * Math.Cos(h));
        var azimuth = Math.Atan2(-Math.Cos(d) * Math.Sin(h), Math.Sin(d) * Math.Cos(Phi) - Math.Cos(d) * Math.Cos(h) * Math.Sin(Phi));
        return new Horizontal(altitude * 180 / Math.PI, (azimuth * 180 / Math.PI + 360) % 360);
    }
}
