using NightWatch.Sky.Eclipses;
using NodaTime;

namespace NightWatch.Sky.Nights;

/// <summary>An eclipse of the Moon as one place has it in one night.</summary>
/// <param name="Eclipse">The eclipse.</param>
/// <param name="MoonUp">When the Moon is above the horizon during any stage of it.</param>
/// <param name="UmbralMoonUp">When it is above the horizon and at least partly in the umbra.</param>
/// <param name="DarkTotality">
/// When the whole Moon is in the umbra while the Sun is below −18°: a dark sky at full Moon. Not counted among the dark windows, since the
/// reddened Moon still shines a little.
/// </param>
public sealed record EclipseOverSite(
    LunarEclipse Eclipse, IReadOnlyList<Interval> MoonUp, IReadOnlyList<Interval> UmbralMoonUp, IReadOnlyList<Interval> DarkTotality)
{
    /// <summary>The eclipse in a night's span; null when there is none or the Moon is down throughout.</summary>
    public static EclipseOverSite? During(NightSky sky)
    {
        // Only a full Moon is eclipsed; the lit fraction at midnight tells most nights apart without a search.
        if (sky.Moon.IlluminatedFraction < 0.97) return null;
        return LunarEclipses
            .Between(sky.Span.Start, sky.Span.End)
            .Select(eclipse => Of(sky, eclipse))
            .FirstOrDefault(over => over is not null);
    }

    private static EclipseOverSite? Of(NightSky sky, LunarEclipse eclipse)
    {
        var up = sky.MoonUpWindows.And([eclipse.Penumbral]);
        if (up.Count == 0) return null;
        return new(
            eclipse,
            up,
            eclipse.Partial is { } partial ? sky.MoonUpWindows.And([partial]) : [],
            eclipse.Total is { } total ? sky.AstronomicalNight.And([total]) : []);
    }
}
