using NightWatch.Service.Terminal;
using NightWatch.Sky.Nights;
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

    public static void Draw(Shell shell, string title, DarkCalendar calendar) =>
        shell.Draw(console =>
        {
            var speech = Speech.Metric(calendar.Nights[0].Sky.Zone);
            var language = speech.Language;
            console.WriteLine(title);
            var ranks = calendar
                .Ranked.Take(RankedShown)
                .Select((night, index) => (night.Night, Rank: index + 1))
                .ToDictionary(entry => entry.Night, entry => entry.Rank);
            var table = new Table().Border(TableBorder.Simple).AddColumns("Night", "Moon", "Dark", "Usable", "Hours", "").Expand();
            table.Columns[4].RightAligned();
            foreach (var night in calendar.Nights)
            {
                table.AddRow(
                    speech.Clock.Date(night.Night),
                    speech.Percent(night.Sky.Moon.IlluminatedFraction),
                    Dark(night.Sky, speech),
                    Usable(night, speech),
                    night.IsUsable ? speech.OneDecimal(night.Usable.TotalHours) : "",
                    new string('█', night.IsUsable ? (int)Math.Round(night.Usable.TotalHours / HoursPerBlock) : 0)
                        + (ranks.TryGetValue(night.Night, out var rank) ? $" {language.Rank(rank)}" : ""));
            }

            console.Write(table);
            foreach (var night in calendar.Nights.Where(night => night.Eclipse is not null))
                console.WriteLine(language.SeasonEclipse(night, speech));
            foreach (var lunation in calendar.Lunations) console.WriteLine(language.Of(lunation, speech));
        });

    // Where there is nothing to show, why: the Sun that stays up, or a subject that stays down through the dark.
    private static string Dark(NightSky sky, Speech speech) =>
        Cell(sky.DarkWindows, sky.Sun.State == SunState.AlwaysUp ? speech.Language.Of(sky.Sun.State) : null, speech);

    private static string Usable(DarkNight night, Speech speech) =>
        Cell(
            night.Offer.Windows,
            night.Sky.DarkWindows.Count > 0 && night.Sky.Subject.State == SubjectState.AlwaysDown
                ? speech.Language.Of(night.Sky.Subject.State)
                : null,
            speech);

    private static string Cell(IReadOnlyList<Interval> windows, string? why, Speech speech) =>
        windows.Count > 0 ? speech.Language.WindowsCell(windows, speech) : why ?? speech.Language.NoneCell;
}
