using NightWatch.Service.Terminal;
using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Season;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Seasons;

/// <summary>A season for people, in local time.</summary>
internal static class SeasonTable
{
    private const int HoursPerBlock = 1;
    private const int RankedShown = 5;

    public static void Draw(Shell shell, string title, DarkCalendar calendar) => shell.Draw(console =>
    {
        console.WriteLine(title);
        var ranks = calendar.Ranked.Take(RankedShown).Select((night, index) => (night.Night, Rank: index + 1)).ToDictionary(entry => entry.Night, entry => entry.Rank);
        var table = new Table().Border(TableBorder.Simple).AddColumns("Night", "Moon", "Dark", "Usable", "Hours", "").Expand();
        table.Columns[4].RightAligned();
        foreach (var night in calendar.Nights)
        {
            table.AddRow(
                LocalText.Date(night.Night),
                MoonOf(night),
                Times(night.Sky.DarkWindows, night.Sky.Zone),
                Times(night.Sky.ShootingWindows, night.Sky.Zone),
                FormattableString.Invariant($"{night.Usable.TotalHours:0.0}"),
                new string('█', (int)Math.Round(night.Usable.TotalHours / HoursPerBlock)) + (ranks.TryGetValue(night.Night, out var rank) ? $" no. {rank}" : ""));
        }

        console.Write(table);
        foreach (var night in calendar.Nights.Where(night => night.Eclipse is not null)) console.WriteLine(EclipseOf(night));
        foreach (var lunation in calendar.Lunations) console.WriteLine(LunationOf(lunation, calendar.Nights[0].Sky.Zone));
    });

    private static string MoonOf(DarkNight night) => FormattableString.Invariant($"{night.Sky.Moon.IlluminatedFraction * 100:0} %");

    private static string EclipseOf(DarkNight night)
    {
        var zone = night.Sky.Zone;
        var eclipse = night.Eclipse!.Eclipse;
        var kind = eclipse.Kind switch { LunarEclipseKind.Total => "total", LunarEclipseKind.Partial => "partial", _ => "penumbral" };
        var dark = night.Eclipse.DarkTotality.Count > 0 ? $"; dark though the Moon is full: {Times(night.Eclipse.DarkTotality, zone)}" : "";
        return $"{LocalText.Date(night.Night)}: {kind} eclipse of the Moon, greatest at {LocalText.Time(eclipse.Greatest, zone)}{dark}.";
    }

    private static string LunationOf(DarkLunation lunation, DateTimeZone zone)
    {
        var newMoon = $"New Moon {LocalText.DayTime(lunation.NewMoon, zone)}: ";
        return lunation.Best is { } run
            ? newMoon + FormattableString.Invariant($"best from {LocalText.Date(run.First)} to {LocalText.Date(run.Last)}, {run.Count} {(run.Count == 1 ? "night" : "nights")}, {run.Usable.TotalHours:0.0} h.")
            : newMoon + "no night with half an hour.";
    }

    private static string Times(IReadOnlyList<Interval> windows, DateTimeZone zone) =>
        windows.Count == 0 ? "-" : string.Join(", ", windows.Select(window => $"{LocalText.Clock(window.Start, zone)} to {LocalText.Time(window.End, zone)}"));
}
