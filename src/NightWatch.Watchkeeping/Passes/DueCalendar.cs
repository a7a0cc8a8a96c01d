using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Time;
using NightWatch.Store.Due;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>When a watch is to be looked at: local intent in, instants out.</summary>
internal static class DueCalendar
{
    /// <summary>When the morning after is asked about: late enough for one who came home at dawn.</summary>
    public static readonly LocalTime AskedAt = new(11, 0);

    private const int FirstSecond = 60;
    private const int SpreadSeconds = 480;

    private static readonly Duration AskedFor = Duration.FromHours(36);

    /// <summary>Everything that every day brings and that is still of use after <paramref name="now"/>, up to a horizon.</summary>
    /// <param name="watch">Of which watch.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="ahead">The horizon.</param>
    /// <param name="home">Where the subscriber's first watch is, so that all of them are due together; null: this is the first.</param>
    public static IEnumerable<DueItem> Daily(Watch watch, Instant now, Duration ahead, GeoPosition? home = null)
    {
        if (watch.Paused) return [];
        var spread = Spread(home ?? watch.Site.Position);
        var first = now.InZone(watch.Site.Zone).Date.PlusDays(-1);
        var last = (now + ahead).InZone(watch.Site.Zone).Date;
        return Enumerable.Range(0, Period.DaysBetween(first, last) + 1)
            .SelectMany(day => OfDay(watch, first.PlusDays(day), spread))
            .Where(item => item.NotAfter > now && item.DueAt <= now + ahead && !watch.IsPausedAt(item.DueAt));
    }

    /// <summary>What a night that a letter spoke of brings: the last word at leave-by, the question on the morning after.</summary>
    public static IEnumerable<DueItem> OfTold(ToldNight told, NightPlan plan, Instant now)
    {
        if (told.Told is null) yield break;
        var watch = plan.Watch;
        // A night that fell through has no run and so no leave-by of its own; the subscriber still leaves when the letter said.
        if (!told.Closed && (told.LeaveBy ?? plan.LeaveBy) is { } leaveBy)
        {
            var outing = Duration.FromMinutes(watch.Outing.DriveMin + watch.Outing.SetUpMin);
            var at = Instant.Max(WholeMillisecond(leaveBy), now);
            yield return new DueItem(new DueKey(watch.Id, PassKind.LeaveBy, told.Night), at, at + outing);
        }

        var asked = At(watch, told.Night.PlusDays(1), AskedAt);
        yield return new DueItem(new DueKey(watch.Id, PassKind.After, told.Night), asked, asked + AskedFor);
    }

    /// <summary>
    /// Rounded up: the table keeps milliseconds, and a look a fraction of one before leave-by would find the subscriber still at home.
    /// </summary>
    private static Instant WholeMillisecond(Instant at)
    {
        var floor = Instant.FromUnixTimeMilliseconds(at.ToUnixTimeMilliseconds());
        return floor < at ? floor + Duration.FromMilliseconds(1) : at;
    }

    private static IEnumerable<DueItem> OfDay(Watch watch, LocalDate date, Duration spread)
    {
        var letters = watch.Letters;
        var morning = At(watch, date, letters.MorningAt) + spread;
        var evening = At(watch, date, letters.EveningAt) + spread;
        var nextMorning = At(watch, date.PlusDays(1), letters.MorningAt) + spread;
        yield return new DueItem(
            new DueKey(watch.Id, PassKind.Morning, date), morning, Instant.Max(evening, morning + Duration.FromHours(1)));
        foreach (var check in letters.SameDayChecks.Distinct())
        {
            var at = At(watch, date, check) + spread;
            yield return new DueItem(
                new DueKey(watch.Id, PassKind.SameDay, date, Slot(check)), at, Instant.Max(evening, at + Duration.FromHours(1)));
        }

        if (letters.Digest == date.DayOfWeek)
            yield return new DueItem(
                new DueKey(watch.Id, PassKind.Digest, date), morning, Instant.Max(evening, morning + Duration.FromHours(1)));
        yield return new DueItem(
            new DueKey(watch.Id, PassKind.Evening, date), evening, Instant.Max(nextMorning, evening + Duration.FromHours(1)));
    }

    /// <summary>
    /// Weather services ask that nobody comes on the full hour. One to nine minutes by the place: the same every day, apart from one
    /// degree to the next, and within a degree in order, so that watches that share a forecast are looked at together.
    /// </summary>
    private static Duration Spread(GeoPosition home)
    {
        var (lat, lon) = (Math.Floor(home.LatitudeDeg), Math.Floor(home.LongitudeDeg));
        var cell = unchecked((uint)((int)lat * 73856093) ^ (uint)((int)lon * 19349663)) * 2654435761u;
        // Ten stripes a degree, each from west to east.
        var stripe = Math.Floor((home.LatitudeDeg - lat) * 10);
        return Duration.FromSeconds(FirstSecond + (cell >> 8) % SpreadSeconds)
            + Duration.FromMilliseconds((long)(stripe * 100 + (home.LongitudeDeg - lon) * 99));
    }

    private static string Slot(LocalTime check) => NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH':'mm").Format(check);

    private static Instant At(Watch watch, LocalDate date, LocalTime time) => LocalClock.At(watch.Site.Zone, date, time);
}
