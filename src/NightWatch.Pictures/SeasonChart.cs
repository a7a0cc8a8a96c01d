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
    /// <param name="speech">Language, units and clock of the reader.</param>
    /// <param name="scale">Device pixels a logical pixel.</param>
    public static byte[] Png(DarkCalendar calendar, string title, Speech speech, double scale = 2) =>
        PngPicture.Of(SceneOf(calendar, title, speech), scale, SKColorType.Rgba8888);

    /// <summary>The same picture as an SVG element.</summary>
    public static string Svg(DarkCalendar calendar, string title, Speech speech) => SvgPicture.Of(SceneOf(calendar, title, speech));

    internal static Scene SceneOf(DarkCalendar calendar, string title, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        var frame = new SeasonFrame(calendar, speech);
        var columns = new SeasonColumns(frame);
        var lunations = new SeasonLunations(frame, speech);
        Shape[] shapes =
        [
            .. frame.Heading(title, calendar),
            .. lunations.Paint(calendar),
            .. columns.Paint(calendar),
            .. frame.Grid(calendar),
            .. lunations.Bars(calendar),
            .. frame.Calendar(calendar),
            .. SeasonLegend.Paint(frame, calendar, speech.Language),
        ];
        return new(frame.Width, frame.Height, speech.Language.SeasonChart(title, calendar, speech), shapes);
    }
}
