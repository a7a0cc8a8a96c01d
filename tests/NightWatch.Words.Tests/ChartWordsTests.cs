using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words.Tests;

public sealed class ChartWordsTests
{
    private static readonly English Language = English.Instance;

    [Theory]
    [InlineData(
        1, 1, 1, 1, 0, "1 called on and usable, 1 drive for nothing, 1 usable night called off, 1 rightly called off, 0 not known.")]
    [InlineData(
        12, 0, 2, 30, 3, "12 called on and usable, 0 drives for nothing, 2 usable nights called off, 30 rightly called off, 3 not known.")]
    public void All_calls_are_counted(int hits, int alarms, int misses, int rejections, int unknown, string words) =>
        Assert.Equal(
            $"Calls night by night: {words}", Language.CallLedger(new ContingencyTable(hits, alarms, misses, rejections), unknown));

    [Fact]
    public void A_season_without_darkness_says_so_in_its_message_and_below_its_title()
    {
        var (calendar, speech) = Season(69, "Europe/Oslo", new LocalDate(2026, 6, 1), 9, new Subject.Stars());

        Assert.Equal(
            "Skerry: stars, 1–9 Jun 2026: no usable night.",
            Language.SeasonChart(Language.SeasonTitle("Skerry", new Subject.Stars()), calendar, speech));
        Assert.Equal("1–9 Jun 2026, clock of Europe/Oslo. No usable night.", Language.SeasonFigure(calendar, speech));
        Assert.All(calendar.Nights, night => Assert.Equal("The Sun does not set.", Language.Of(night.Sky.Sun.State)));
    }

    // In early May at 50° north the galactic core passes 10° minutes before dawn; a run needs half an hour a night.
    [Fact]
    public void A_season_of_short_windows_has_no_run_to_tell_of()
    {
        var (calendar, speech) = Season(50, "Europe/Prague", new LocalDate(2027, 5, 1), 14, new Subject.GalacticCore());

        Assert.NotEmpty(calendar.Ranked);
        Assert.All(calendar.Lunations, lunation => Assert.Null(lunation.Best));
        var words = Language.SeasonChart("Meadow", calendar, speech);
        Assert.Equal(
            $"Meadow, 1–14 May 2027: {calendar.Ranked.Count} usable nights of 14. Best night Wed 12 May, 11 min of good frames.", words);
    }

    [Theory]
    [InlineData(28, 12, 3, true, "28 Dec–3 Jan, 21 h")]
    [InlineData(28, 12, 3, false, "28 Dec–3 Jan")]
    public void A_run_within_a_season_needs_no_year(int day, int month, int last, bool hasRoom, string words) =>
        Assert.Equal(
            words, Language.BestRun(new NightSpell(new(2026, month, day), new(2027, 1, last), 7, Duration.FromHours(21)), hasRoom));

    [Theory]
    [InlineData(UnitSystem.Metric, "+4°C")]
    [InlineData(UnitSystem.Imperial, "+7.2°F")]
    public void The_lens_is_marked_in_the_readers_units(UnitSystem units, string words) =>
        Assert.Equal(words, Language.LensMark(4, new Speech(Language, units, DateTimeZone.Utc)));

    [Fact]
    public void Every_shade_mark_and_event_has_its_words()
    {
        Assert.All(Enum.GetValues<SeasonShade>(), shade => Assert.NotEmpty(Language.Of(shade, hasSubject: true)));
        Assert.NotEqual(Language.Of(SeasonShade.Usable, hasSubject: true), Language.Of(SeasonShade.Usable, hasSubject: false));
        Assert.All(Enum.GetValues<SkyEvent>(), what => Assert.NotEmpty(Language.Of(what)));
        Assert.All(
            Enum.GetValues<PathMark>(),
            mark =>
                Assert.StartsWith(
                    "21:40 ", Language.Of(mark, Instant.FromUtc(2027, 6, 4, 21, 40), Speech.ToAnybody), StringComparison.Ordinal));
    }

    private static (DarkCalendar Calendar, Speech Speech) Season(double latitude, string zone, LocalDate from, int nights, Subject subject)
    {
        var zoneOf = DateTimeZoneProviders.Tzdb[zone];
        return (DarkCalendar.Of(new GeoPosition(latitude, 15), zoneOf, from, nights, subject), Speech.Metric(zoneOf));
    }
}
