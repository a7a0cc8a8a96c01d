using NightWatch.Letters.Calendar;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Tests.Calendar;

public class SeasonCalendarTests
{
    private static readonly GeoPosition Saddle = new(36.0123, -117.5, 1200);
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 12, 0);

    private static readonly DarkCalendar Spring = DarkCalendar.Of(
        Saddle, DateTimeZoneProviders.Tzdb["America/Los_Angeles"], new LocalDate(2026, 4, 1), 60, new Subject.GalacticCore());

    private static readonly string Text = SeasonCalendar.Text(Spring, Saddle, "Saddle of the Two Ravens; lower, drier", Now);

    [Fact]
    public void Every_night_of_the_best_runs_stands_in_it_with_its_longest_window_to_the_minute_that_is_said()
    {
        var read = Ical.Net.Calendar.Load(Text)!;
        var runs = Spring.Lunations.Where(lunation => lunation.Best is not null).ToList();
        Assert.Equal(runs.Sum(lunation => lunation.Best!.Count + 1), read.Events.Count);
        foreach (var lunation in runs)
        {
            foreach (var night in lunation.Nights.Where(night => night.Night >= lunation.Best!.First && night.Night <= lunation.Best.Last))
            {
                var entry = read.Events.Single(entry => entry.Uid == $"season-night-{night.Night:uuuuMMdd}-36.0123--117.5@nightwatch");
                Assert.Equal(ClockWords.Minute(night.Longest!.Value.Start).ToUnixTimeSeconds(), Unix(entry.Start!.AsUtc));
                Assert.Equal(ClockWords.Minute(night.Longest.Value.End).ToUnixTimeSeconds(), Unix(entry.End!.AsUtc));
                Assert.True(entry.Start.HasTime && entry.Start.IsUtc);
            }
        }
    }

    [Fact]
    public void A_run_is_an_all_day_entry_that_ends_the_day_after_its_last_night()
    {
        var run = Spring.Lunations.Select(lunation => lunation.Best).OfType<NightSpell>().First();
        var entry = Ical.Net.Calendar.Load(Text)!.Events.First(entry => entry.Uid!.StartsWith("season-run-", StringComparison.Ordinal));
        Assert.False(entry.Start!.HasTime);
        Assert.Equal(run.First.ToDateOnly(), entry.Start.Date);
        Assert.Equal(run.Last.PlusDays(1).ToDateOnly(), entry.End!.Date);
    }

    // RFC 5545: METHOD and DTSTAMP (3.6.1), lines of at most 75 octets that end in CRLF (3.1), commas and semicolons escaped in text
    // (3.3.11).
    [Fact]
    public void The_file_keeps_the_standard()
    {
        Assert.Contains("METHOD:PUBLISH\r\n", Text);
        Assert.Contains("DTSTAMP:20260301T120000Z\r\n", Text);
        Assert.Contains(@"LOCATION:Saddle of the Two Ravens\; lower\, drier", Text);
        Assert.Contains("TRANSP:TRANSPARENT", Text);
        Assert.All(Text.Split("\r\n"), line => Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(line), 0, 75));
        var uids = Ical.Net.Calendar.Load(Text)!.Events.Select(entry => entry.Uid).ToList();
        Assert.Equal(uids.Count, uids.Distinct().Count());
    }

    [Fact]
    public void A_season_without_usable_nights_is_an_empty_calendar()
    {
        var none = DarkCalendar.Of(
            new(69.6, 19), DateTimeZoneProviders.Tzdb["Europe/Oslo"], new LocalDate(2026, 6, 1), 10, new Subject.Stars());
        Assert.Empty(Ical.Net.Calendar.Load(SeasonCalendar.Text(none, new(69.6, 19), "Skerry", Now))!.Events);
    }

    private static long Unix(DateTime utc) => new DateTimeOffset(utc, TimeSpan.Zero).ToUnixTimeSeconds();
}
