using System.Xml.Linq;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NightWatch.Words;
using NodaTime;
using SkiaSharp;

namespace NightWatch.Pictures.Tests;

public class SeasonChartTests
{
    private static readonly Speech Speaking = Speech.ToAnybody;

    private static DarkCalendar Nights(double latitude, string zone, LocalDate from, int nights, Subject? subject = null) =>
        DarkCalendar.Of(
            new GeoPosition(latitude, 15), DateTimeZoneProviders.Tzdb[zone], from, nights, subject ?? new Subject.GalacticCore());

    [Fact]
    public void The_usable_hours_stand_where_they_are_in_the_night()
    {
        var calendar = Nights(-24, "Africa/Windhoek", new LocalDate(2026, 6, 1), 30);
        var frame = new SeasonFrame(calendar, Speaking);
        using var picture = SKBitmap.Decode(SeasonChart.Png(calendar, "Gravel plain", Speaking, 1));
        Assert.Equal((int)frame.Width, picture.Width);
        foreach (var night in calendar.Nights)
        {
            var x = (int)(frame.X(night.Night) + frame.ColumnPx / 2);
            foreach (var window in night.Sky.ShootingWindows.Where(window => window.Duration > Duration.FromMinutes(30)))
                Assert.Equal(
                    SKColor.Parse(SeasonColumns.Usable),
                    picture.GetPixel(x, (int)frame.Y(window.Start + window.Duration * 0.4, night.Night)));
            // The line of the subject's rise crosses that of sunset in some nights.
            if (
                night.Sky.Sun.Set is { } set
                && !night.Sky.SubjectWindows.Any(window => (window.Start - set).TotalMinutes is > -30 and < 30))
                Assert.Equal(SKColor.Parse(SeasonColumns.Day), picture.GetPixel(x, (int)frame.Y(set, night.Night) - 3));
        }
    }

    [Theory]
    [InlineData(50, "Europe/Berlin", 1)]
    [InlineData(78, "Arctic/Longyearbyen", 365)]
    [InlineData(-89, "Antarctica/McMurdo", 365)]
    [InlineData(50, "Europe/Berlin", 1500)]
    public void Any_place_and_length_gives_a_picture_whose_shapes_stay_inside(double latitude, string zone, int nights)
    {
        var scene = SeasonChart.SceneOf(
            Nights(latitude, zone, new LocalDate(2026, 1, 1), nights, new Subject.Stars()), "Somewhere", Speaking);
        foreach (var spot in scene.Shapes.SelectMany(Spots))
        {
            Assert.InRange(spot.X, 0, scene.Width);
            Assert.InRange(spot.Y, 0, scene.Height);
        }
    }

    [Fact]
    public void The_picture_says_its_message_in_words_too()
    {
        var calendar = Nights(50, "Europe/Berlin", new LocalDate(2026, 1, 1), 90, new Subject.Stars());
        var svg = XDocument.Parse(SeasonChart.Svg(calendar, "Heath & moor", Speaking));
        Assert.Contains("Heath & moor, 1 Jan–31 Mar 2026:", svg.Root!.Elements().First().Value);
    }

    [Fact]
    public void A_season_of_windows_too_short_for_a_run_has_its_picture()
    {
        var scene = SeasonChart.SceneOf(Nights(50, "Europe/Prague", new LocalDate(2027, 5, 1), 14), "Meadow", Speaking);

        Assert.EndsWith("Best night Wed 12 May, 11 min of good frames.", scene.Says, StringComparison.Ordinal);
    }

    private static IEnumerable<Spot> Spots(Shape shape) => shape switch
    {
        Shape.Area area => area.Outline,
        Shape.Line line => line.Path,
        Shape.Words words => [words.At],
        _ => [],
    };
}
