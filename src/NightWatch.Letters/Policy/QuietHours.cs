using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>The hours without letters, local at the site; they may run over midnight. Equal bounds: there are none.</summary>
internal readonly record struct QuietHours(LocalTime From, LocalTime Until, DateTimeZone Zone)
{
    /// <summary>A watch's quiet hours.</summary>
    public static QuietHours Of(Watch watch) => new(watch.Letters.QuietFrom, watch.Letters.QuietUntil, watch.Site.Zone);

    /// <summary>When the quiet that reigns at an instant ends; null when none reigns.</summary>
    public Instant? EndAfter(Instant now)
    {
        if (From == Until) return null;
        var local = now.InZone(Zone).LocalDateTime;
        var quiet = From < Until
            ? local.TimeOfDay >= From && local.TimeOfDay < Until
            : local.TimeOfDay >= From || local.TimeOfDay < Until;
        if (!quiet) return null;
        var endsToday = local.TimeOfDay < Until;
        return LocalClock.At(Zone, endsToday ? local.Date : local.Date.PlusDays(1), Until);
    }
}
