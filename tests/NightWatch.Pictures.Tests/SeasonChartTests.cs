using System.Xml.Linq;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;
using SkiaSharp;

namespace NightWatch.Pictures.Tests;

public class SeasonChartTests
{
    private static DarkCalendar Nights(double latitude, string zone, LocalDate from, int nights, Subject? subject = null) =>
        DarkCalendar.Of(new GeoPosition(latitude, 15), DateTimeZoneProviders.Tzdb[zone], from, nights, subject ?? new Subject.GalacticCore());

    [Fact]
    public void The_usable_hours_stand_where_they_are_in_the_night()
    {
        var calendar = Nights(-24, "Africa/Windhoek", new LocalDate(2026, 6, 1), 30);
        var frame = new SeasonFrame(calendar);
        using var picture = SKBitmap.Decode(SeasonChart.Png(calendar, "Gravel plain", 1));
        Assert.Equal((int)frame.Width, picture.Width);
        foreach (var night in calendar.Nights)
        {
            var x = (int)(frame.X(night.Night) + frame.ColumnPx / 2);
            foreach (var window in night.Sky.ShootingWindows.Where(window => window.Duration > Duration.FromMinutes(30)))
                Assert.Equal(SKColor.Parse(SeasonColumns.Usable), picture.GetPixel(x, (int)frame.Y(window.Start + window.Duration * 0.4, night.Night)));
            // The line of the subject's rise crosses that of sunset in some nights.
            if (night.Sky.Sun.Set is { } set && !night.Sky.SubjectWindows.Any(window => (window.Start - set).TotalMinutes is > -30 and < 30))
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
        var scene = SeasonChart.SceneOf(Nights(latitude, zone, new LocalDate(2026, 1, 1), nights, new Subject.Stars()), "Somewhere");
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
        var svg = XDocument.Parse(SeasonChart.Svg(calendar, "Heath & moor"));
        Assert.Equal(SeasonChart.Says(calendar, "Heath & moor"), svg.Root!.Elements().First().Value);
        Assert.Contains("Heath & moor, 1 Jan–31 Mar 2026:", svg.Root.Elements().First().Value);
        Assert.Contains("no usable night", SeasonChart.Says(Nights(69, "Europe/Oslo", new LocalDate(2026, 6, 1), 9), "Skerry"));
    }

    [Theory]
    [InlineData(2026, 6, 3, 2026, 6, 9, "3–9 Jun 2026")]
    [InlineData(2026, 5, 28, 2026, 6, 3, "28 May–3 Jun 2026")]
    [InlineData(2026, 12, 28, 2027, 1, 3, "28 Dec 2026–3 Jan 2027")]
    [InlineData(2026, 6, 3, 2026, 6, 3, "3 Jun 2026")]
    public void Dates_are_as_short_as_they_can_be_understood(int y1, int m1, int d1, int y2, int m2, int d2, string words) =>
        Assert.Equal(words, SeasonFrame.Dates(new(y1, m1, d1), new(y2, m2, d2)));

    private static IEnumerable<Spot> Spots(Shape shape) => shape switch
    {
        Shape.Area area => area.Outline,
        Shape.Line line => line.Path,
        Shape.Words words => [words.At],
        _ => [],
    };
}
