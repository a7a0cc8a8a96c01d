using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Service.Commands.Seasons;

/// <summary>The season document: every night, the usable ones by rank, and the lunations with their best runs.</summary>
internal sealed record SeasonDocument(
    DateTimeZone Zone,
    LocalDate From,
    IReadOnlyList<SeasonNight> Nights,
    IReadOnlyList<LocalDate> Ranked,
    IReadOnlyList<SeasonLunation> Lunations)
{
    public static SeasonDocument Of(DarkCalendar calendar)
    {
        var ranks = calendar
            .Ranked.Select((night, index) => (night.Night, Rank: index + 1))
            .ToDictionary(entry => entry.Night, entry => entry.Rank);
        return new(
            calendar.Nights[0].Sky.Zone,
            calendar.Nights[0].Night,
            [.. calendar.Nights.Select(night => SeasonNight.Of(night, ranks.TryGetValue(night.Night, out var rank) ? rank : null))],
            [.. calendar.Ranked.Select(night => night.Night)],
            [.. calendar.Lunations.Select(SeasonLunation.Of)]);
    }

    public static double Hours(Duration length) => Math.Round(length.TotalHours, 4);
}

/// <summary>
/// One night of it; the rank counts from 1 and is null for a night that the sky does not make usable. Run: its best piece, with the minutes
/// of good frames in it.
/// </summary>
internal sealed record SeasonNight(
    LocalDate Night,
    int? Rank,
    IReadOnlyList<Interval> DarkWindows,
    IReadOnlyList<Interval> SubjectWindows,
    IReadOnlyList<Interval> ShootingWindows,
    double DarkHours,
    double ShootingHours,
    double LongestHours,
    double MoonIlluminatedFraction,
    IReadOnlyList<Instant> Moonrises,
    IReadOnlyList<Instant> Moonsets,
    SeasonEclipse? Eclipse,
    bool Usable,
    double UsableMinutes,
    Interval? Run)
{
    public static SeasonNight Of(DarkNight night, int? rank) => new(
        night.Night,
        rank,
        night.Sky.DarkWindows,
        night.Sky.SubjectWindows,
        night.Sky.ShootingWindows,
        Math.Round(night.Sky.DarkWindows.Sum(window => window.Duration.TotalHours), 4),
        Math.Round(night.Sky.ShootingWindows.Sum(window => window.Duration.TotalHours), 4),
        night.Sky.ShootingWindows.Select(window => SeasonDocument.Hours(window.Duration)).DefaultIfEmpty(0).Max(),
        Math.Round(night.Sky.Moon.IlluminatedFraction, 6),
        night.Sky.Moon.Rises,
        night.Sky.Moon.Sets,
        night.Eclipse is { } over ? SeasonEclipse.Of(over) : null,
        night.IsUsable,
        Math.Round(night.LongestRun.TotalMinutes, 1),
        night.Longest);
}

/// <summary>An eclipse of the Moon over the place.</summary>
internal sealed record SeasonEclipse(
    LunarEclipseKind Kind,
    Instant Greatest,
    double UmbralMagnitude,
    Interval? Partial,
    Interval? Total,
    IReadOnlyList<Interval> DarkTotality)
{
    public static SeasonEclipse Of(EclipseOverSite over) => new(
        over.Eclipse.Kind,
        over.Eclipse.Greatest,
        Math.Round(over.Eclipse.UmbralMagnitude, 4),
        over.Eclipse.Partial,
        over.Eclipse.Total,
        over.DarkTotality);
}

/// <summary>A lunation: its new Moon, its nights in this season, its best run.</summary>
internal sealed record SeasonLunation(Instant NewMoon, LocalDate First, LocalDate Last, SeasonSpell? Best)
{
    public static SeasonLunation Of(DarkLunation lunation) => new(
        lunation.NewMoon,
        lunation.Nights[0].Night,
        lunation.Nights[^1].Night,
        lunation.Best is { } run ? new(run.First, run.Last, run.Count, SeasonDocument.Hours(run.Usable)) : null);
}

/// <summary>Nights in a row, each nearly as good as the best of the lunation.</summary>
internal sealed record SeasonSpell(LocalDate First, LocalDate Last, int Nights, double ShootingHours);
