using System.Globalization;
using NightWatch.Sky.Season;
using NightWatch.Words;
using SkiaSharp;

namespace NightWatch.Pictures;

/// <summary>
/// A season at a glance: nights across, the hours of the night down. Day, twilight and night are shades, the Moon's hours are lit by as
/// much of it as shines, and the usable hours stand out; below them how many there are each night, above them the best run of each
/// lunation.
/// </summary>
/// <remarks>Brightness alone carries the message, so that it also reads in grey and without colour vision.</remarks>
public static class SeasonChart
{
    /// <summary>PNG bytes, in colour.</summary>
    /// <param name="calendar">The nights.</param>
    /// <param name="title">What and where, in a few words.</param>
    /// <param name="scale">Device pixels a logical pixel.</param>
    public static byte[] Png(DarkCalendar calendar, string title, double scale = 2) =>
        PngPicture.Of(SceneOf(calendar, title), scale, SKColorType.Rgba8888);

    /// <summary>The same picture as an SVG element.</summary>
    public static string Svg(DarkCalendar calendar, string title) => SvgPicture.Of(SceneOf(calendar, title));

    /// <summary>The picture's message in words.</summary>
    public static string Says(DarkCalendar calendar, string title)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var span = SeasonFrame.Dates(calendar.Nights[0].Night, calendar.Nights[^1].Night);
        if (calendar.Ranked.Count == 0) return $"{title}, {span}: no usable night.";
        var best = calendar.Ranked[0];
        var runs = calendar.Lunations.Where(lunation => lunation.Best is not null).Select(lunation => lunation.Best!).ToList();
        var run = runs.MaxBy(run => run.Usable)!;
        var clock = Speech.Metric(best.Sky.Zone).Clock;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{title}, {span}: {calendar.Ranked.Count} usable nights of {calendar.Nights.Count}. Longest window {clock.Length(best.LongestRun)} in the night of {clock.Day(best.Night)}; best run {SeasonFrame.Dates(run.First, run.Last)} with {run.Usable.TotalHours:0} h.");
    }

    internal static Scene SceneOf(DarkCalendar calendar, string title)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var frame = new SeasonFrame(calendar);
        var columns = new SeasonColumns(frame);
        var lunations = new SeasonLunations(frame);
        Shape[] shapes =
        [
            .. frame.Heading(title, calendar),
            .. lunations.Paint(calendar),
            .. columns.Paint(calendar),
            .. frame.Grid(calendar),
            .. lunations.Bars(calendar),
            .. frame.Calendar(calendar),
            .. SeasonLegend.Paint(frame, calendar),
        ];
        return new(frame.Width, frame.Height, Says(calendar, title), shapes);
    }
}
