using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The nights of an archive, and the blocks they are left out by.</summary>
internal static class ArchiveNights
{
    private const int MonthsPerBlock = 2;

    /// <summary>Every night that the hours which came touch, in order; none where they tell of no cloud.</summary>
    public static IReadOnlyList<LocalDate> Of(ForecastSeries came, DateTimeZone zone)
    {
        if (!came.Instants.TryGetValue(InstantQuantity.CloudAreaFraction, out var hours)) return [];
        var (first, last) = (NightOf(hours[0].At), NightOf(hours[^1].At));
        return [.. Enumerable.Range(0, Period.DaysBetween(first, last) + 1).Select(first.PlusDays)];

        LocalDate NightOf(Instant at) =>
            at.InZone(zone) is var local && local.TimeOfDay < LocalTime.Noon ? local.Date.PlusDays(-1) : local.Date;
    }

    /// <summary>Two months of the calendar, from an odd one on, by a number of their own.</summary>
    public static int BlockOf(LocalDate night) => (night.Year * 12 + night.Month - 1) / MonthsPerBlock;
}
