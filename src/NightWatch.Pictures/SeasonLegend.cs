using NightWatch.Sky.Nights;
using NightWatch.Sky.Season;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>What the shades of the season's picture mean.</summary>
internal static class SeasonLegend
{
    /// <summary>A line of swatches at the foot, in two lines where the picture is narrow.</summary>
    public static IEnumerable<Shape> Paint(SeasonFrame frame, DarkCalendar calendar, ILanguage language)
    {
        var hasSubject = calendar.Nights[0].Sky.Subject.State != SubjectState.None;
        List<(string Color, SeasonShade Shade)> entries = [(SeasonColumns.Usable, SeasonShade.Usable)];
        if (hasSubject) entries.Add((SeasonColumns.Night, SeasonShade.SubjectDown));
        entries.AddRange([
            (SeasonColumns.Moonlit(0.3), SeasonShade.ThinMoon),
            (SeasonColumns.Moonlit(1), SeasonShade.FullMoon),
            (SeasonColumns.AstronomicalTwilight, SeasonShade.AstronomicalTwilight),
            (SeasonColumns.NauticalTwilight, SeasonShade.NauticalTwilight),
            (SeasonColumns.CivilTwilight, SeasonShade.CivilTwilight),
            (SeasonColumns.Day, SeasonShade.Day),
        ]);
        if (calendar.Nights.Any(night => night.Eclipse?.DarkTotality.Count > 0))
            entries.Add((SeasonColumns.EclipsedMoon, SeasonShade.EclipsedMoon));
        var x = SeasonFrame.LeftPx;
        var y = frame.BarsTop + SeasonFrame.BarsHeightPx + 68;
        foreach (var (color, shade) in entries)
        {
            var words = language.Of(shade, hasSubject);
            var width = 22 + words.Length * 7.3 + 12;
            if (x + width > frame.Width) (x, y) = (SeasonFrame.LeftPx, y + 24);
            yield return TimeAxis.Box(x, y - 12, x + 16, y + 2, color);
            yield return new Shape.Line(
                [new(x, y - 12), new(x + 16, y - 12), new(x + 16, y + 2), new(x, y + 2), new(x, y - 12)], SeasonFrame.Faint, 0.8);
            yield return new Shape.Words(new(x + 22, y), words, 13);
            x += width;
        }

        if (!hasSubject) yield break;
        if (x + 190 > frame.Width) (x, y) = (SeasonFrame.LeftPx, y + 24);
        yield return new Shape.Line([new(x, y - 5), new(x + 16, y - 5)], SeasonColumns.SubjectEdge, 2);
        yield return new Shape.Words(new(x + 22, y), language.Of(SeasonShade.SubjectEdge, hasSubject), 13);
    }
}
