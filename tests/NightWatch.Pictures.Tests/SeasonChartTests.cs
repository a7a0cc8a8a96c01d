using System.Globalization;
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

    /// <summary>
    /// The picture is read as a reader does, by its own labels: rows by the ticks of the hours, columns by the numbers of the days, the
    /// usable hours by the legend. Where the day ends and where they begin is held against the US National Oceanic and Atmospheric
    /// Administration's General Solar Position Calculations (a truncated series good to a minute or two; coefficients from memory).
    /// </summary>
    [Fact]
    public void A_reader_finds_sunset_and_the_end_of_dusk_at_their_hours()
    {
        var calendar = Nights(-24, "Africa/Windhoek", new LocalDate(2026, 6, 1), 30);
        var words = XDocument
            .Parse(SeasonChart.Svg(calendar, "Gravel plain", Speaking))
            .Descendants()
            .Where(one => one.Name.LocalName == "text")
            .ToList();
        using var picture = SKBitmap.Decode(SeasonChart.Png(calendar, "Gravel plain", Speaking, 1));
        var legend = words.Single(one => one.Value.StartsWith("usable", StringComparison.Ordinal));
        var usable = picture.GetPixel((int)Place(legend, "x") - 12, (int)Place(legend, "y") - 6);
        var hours = words
            .Where(one => one.Value.EndsWith(":00", StringComparison.Ordinal))
            .Select(one => int.Parse(one.Value[..2], CultureInfo.InvariantCulture))
            .ToList();
        var edge = (int)Place(words.Single(one => one.Value == "18:00"), "x") + 7;
        var ticks = Enumerable
            .Range(160, picture.Height - 260)
            .Where(y => picture.GetPixel(edge, y).Red < 190 && picture.GetPixel(edge, y - 1).Red >= 190)
            .ToList();
        Assert.Equal((18, 8), (hours[0], hours[^1]));
        Assert.True(ticks.Count >= hours.Count, $"{ticks.Count} ticks for {hours.Count} hours.");
        var pxAnHour = (ticks[1] - ticks[0]) / 2.0;

        var (days, ends) = (0, 0);
        foreach (var night in calendar.Nights.Select(night => night.Night))
        {
            var label = words.Single(one =>
                (string?)one.Attribute("font-size") == "12" && one.Value == night.Day.ToString(CultureInfo.InvariantCulture));
            var x = (int)Place(label, "x");
            var day = picture.GetPixel(x, ticks[0] + 2);
            var end = Enumerable.Range(ticks[0] + 2, 400).First(y => picture.GetPixel(x, y) != day);
            // The red line of the subject's rise may lie on the edge.
            if (!Enumerable.Range(end, 3).Any(y => picture.GetPixel(x, y) is { Red: > 180, Blue: < 80 }))
            {
                Assert.Equal(SunAt(night, 90.833), 18 + (end - ticks[0]) / pxAnHour, 0.08);
                days++;
            }

            // On these evenings neither the red line nor the Moon is in the way.
            if (night.Day is < 12 or > 15) continue;
            var begins = Enumerable.Range(ticks[0] + 2, 400).First(y => picture.GetPixel(x, y) == usable);
            Assert.Equal(SunAt(night, 108), 18 + (begins - ticks[0]) / pxAnHour, 0.1);
            ends++;
        }

        Assert.True(days >= 20 && ends == 4, $"{days} sunsets and {ends} dusks were read.");
    }

    private static double Place(XElement text, string axis) => double.Parse(text.Attribute(axis)!.Value, CultureInfo.InvariantCulture);

    // Local hours, at 24 S 15 E two hours east of Greenwich, when the Sun sinks to a distance from the zenith.
    private static double SunAt(LocalDate night, double zenithDeg)
    {
        const double Degree = Math.PI / 180;
        var year = 2 * Math.PI / 365 * (night.DayOfYear - 1 + (16 - 12) / 24.0);
        var equationMin =
            229.18
            * (
                0.000075
                + 0.001868 * Math.Cos(year)
                - 0.032077 * Math.Sin(year)
                - 0.014615 * Math.Cos(2 * year)
                - 0.040849 * Math.Sin(2 * year));
        var declination =
            0.006918
            - 0.399912 * Math.Cos(year)
            + 0.070257 * Math.Sin(year)
            - 0.006758 * Math.Cos(2 * year)
            + 0.000907 * Math.Sin(2 * year)
            - 0.002697 * Math.Cos(3 * year)
            + 0.00148 * Math.Sin(3 * year);
        var hourAngle =
            Math.Acos(
                Math.Cos(zenithDeg * Degree) / (Math.Cos(-24 * Degree) * Math.Cos(declination))
                    - Math.Tan(-24 * Degree) * Math.Tan(declination)) / Degree;
        return (720 - 4 * (15 - hourAngle) - equationMin) / 60 + 2;
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
