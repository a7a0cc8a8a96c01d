using NightWatch.Sky.Meteors;
using NightWatch.Sky.Subjects;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Meteors;

public class MeteorShowersTests
{
    private static MeteorShower Of(string code) => MeteorShowers.All.Single(shower => shower.Code == code);

    // International Meteor Organization, Working List of Visual Meteor Showers (2025): the date of the maximum, the radiant on it, and the
    // speed. Two lists of one shower differ by a day or two and a few degrees.
    [Theory]
    [InlineData("QUA", "2025-01-04", 230, 49, 41)]
    [InlineData("LYR", "2025-04-22", 271, 34, 49)]
    [InlineData("ETA", "2025-05-05", 338, -1, 66)]
    [InlineData("SDA", "2025-07-30", 340, -16, 41)]
    [InlineData("CAP", "2025-07-30", 307, -10, 23)]
    [InlineData("PER", "2025-08-12", 48, 58, 59)]
    [InlineData("AUR", "2025-08-31", 91, 39, 66)]
    [InlineData("SPE", "2025-09-09", 48, 40, 64)]
    [InlineData("DRA", "2025-10-08", 262, 54, 20)]
    [InlineData("ORI", "2025-10-22", 95, 16, 66)]
    [InlineData("NTA", "2025-11-12", 58, 22, 29)]
    [InlineData("LEO", "2025-11-17", 152, 22, 71)]
    [InlineData("HYD", "2025-12-11", 127, 2, 58)]
    [InlineData("GEM", "2025-12-14", 112, 33, 35)]
    [InlineData("URS", "2025-12-22", 217, 76, 33)]
    public void Maxima_radiants_and_speeds_agree_with_the_working_list(
        string code, string date, double rightAscension, double declination, double speed)
    {
        var shower = Of(code);
        var noon = LocalDatePattern.Iso.Parse(date).Value.At(LocalTime.Noon).InUtc().ToInstant();
        Assert.InRange((shower.PeakNear(noon) - noon).TotalDays, -2.5, 2.5);
        var (ra, dec) = shower.Radiant.At(SolarLongitudeOf(noon));
        Assert.InRange(Math.IEEERemainder(ra - rightAscension, 360) * Math.Cos(double.DegreesToRadians(declination)), -4, 4);
        Assert.Equal(declination, dec, 2.5);
        Assert.Equal(speed, shower.SpeedKmps, 2.5);
    }

    [Fact]
    public void The_showers_of_a_night_are_those_whose_season_it_is_the_richest_first()
    {
        var august = MeteorShowers.ActiveOn(DateTimeZone.Utc, new LocalDate(2026, 8, 12));
        Assert.Equal("PER", august[0].Shower.Code);
        Assert.True(august[0].PeaksTonight);
        Assert.Contains(august, active => active.Shower.Code == "KCG" && !active.PeaksTonight);
        Assert.DoesNotContain(august, active => active.Shower.Code == "GEM");
        Assert.Equal(august.OrderByDescending(active => active.Shower.ZenithalHourlyRate), august);
        Assert.Empty(MeteorShowers.ActiveOn(DateTimeZone.Utc, new LocalDate(2026, 2, 20)));
    }

    [Fact]
    public void Each_shower_peaks_in_exactly_one_night_of_a_year_and_is_active_in_it()
    {
        var peaks = Enumerable.Range(0, 365)
            .SelectMany(day => MeteorShowers.ActiveOn(DateTimeZone.Utc, new LocalDate(2026, 1, 1).PlusDays(day)))
            .Where(active => active.PeaksTonight)
            .Select(active => active.Shower.Code)
            .Order();
        Assert.Equal(MeteorShowers.All.Select(shower => shower.Code).Order(), peaks);
    }

    [Fact]
    public void The_radiant_drifts_eastward_night_by_night()
    {
        var perseids = Of("PER");
        var night = Instant.FromUtc(2026, 8, 12, 0, 0);
        var first = Assert.IsType<Subject.FixedPoint>(perseids.SubjectAt(night));
        var second = Assert.IsType<Subject.FixedPoint>(perseids.SubjectAt(night + Duration.FromDays(1)));
        Assert.Equal("Perseids radiant", first.Name);
        // 1.40 degrees of right ascension a degree of solar longitude, of which August has 0.96 a day.
        Assert.Equal(1.34, second.RightAscensionDeg - first.RightAscensionDeg, 0.02);
    }

    private static double SolarLongitudeOf(Instant at) => Sky.Sun.SolarLongitude.DegAt(at);
}
