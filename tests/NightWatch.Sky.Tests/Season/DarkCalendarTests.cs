using CsCheck;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Tests.Season;

public class DarkCalendarTests
{
    private static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];
    private static readonly GeoPosition Rhoen = new(50.48, 10.02, 900);
    private static readonly Subject Core = new Subject.GalacticCore();

    private static readonly DarkCalendar Year = DarkCalendar.Of(Rhoen, Berlin, new LocalDate(2026, 1, 1), 365, new Subject.Stars());

    [Fact]
    public void Every_night_stands_once_in_order_and_in_one_lunation()
    {
        Assert.Equal(Enumerable.Range(0, 365).Select(new LocalDate(2026, 1, 1).PlusDays), Year.Nights.Select(night => night.Night));
        Assert.Equal(Year.Nights, Year.Lunations.SelectMany(lunation => lunation.Nights));
        // Fourteen full Moons cut 2026 into parts, the first and the last of a few days.
        Assert.Equal(14, Year.Lunations.Count);
    }

    [Fact]
    public void A_lunation_runs_from_full_moon_to_full_moon_around_its_new_moon()
    {
        foreach (var lunation in Year.Lunations.Skip(1).SkipLast(1))
        {
            Assert.InRange(lunation.Nights.Count, 29, 30);
            Assert.True(lunation.Nights[0].Sky.Moon.IlluminatedFraction > 0.95);
            Assert.True(lunation.Nights[^1].Sky.Moon.IlluminatedFraction > 0.95);
            Assert.Contains(
                MoonPhases.Between(lunation.NewMoon - Duration.FromSeconds(1), lunation.NewMoon + Duration.FromSeconds(1)),
                phase => phase.Name == PhaseName.New);
            var darkest = lunation.Nights.MinBy(night => night.Sky.Moon.IlluminatedFraction)!;
            Assert.InRange((darkest.Sky.Sun.Midnight - lunation.NewMoon).TotalHours, -13, 13);
        }
    }

    [Fact]
    public void Usable_time_is_that_of_the_shooting_windows() =>
        Assert.All(Year.Nights, night =>
        {
            Assert.Equal(night.Sky.ShootingWindows.Sum(window => window.Duration.TotalSeconds), night.Usable.TotalSeconds, 0.001);
            Assert.True(night.LongestRun <= night.Usable);
            Assert.Equal(night.Sky.ShootingWindows.Count == 0, night.Longest is null);
        });

    [Fact]
    public void Nights_are_ranked_by_their_longest_window_and_useless_ones_not_at_all()
    {
        var ranked = Year.Ranked;
        Assert.Equal(Year.Nights.Count(night => night.Usable > Duration.Zero), ranked.Count);
        Assert.All(
            ranked.Zip(ranked.Skip(1)), pair => Assert.True(pair.First.LongestRun + Duration.FromMinutes(1) > pair.Second.LongestRun));
        // In the middle of Germany the longest dark window falls near the new Moon next to the winter solstice.
        Assert.InRange(Math.Abs(Period.DaysBetween(new LocalDate(2026, 12, 21), ranked[0].Night)), 0, 14);
    }

    [Fact]
    public void The_best_run_of_a_lunation_has_no_gap_and_holds_its_best_night()
    {
        foreach (var lunation in Year.Lunations.Where(lunation => lunation.Best is not null))
        {
            var run = lunation.Best!;
            var nights = lunation.Nights.Where(night => night.Night >= run.First && night.Night <= run.Last).ToList();
            Assert.Equal(run.Count, nights.Count);
            Assert.Equal(Period.DaysBetween(run.First, run.Last) + 1, run.Count);
            Assert.Equal(nights.Sum(night => night.Usable.TotalSeconds), run.Usable.TotalSeconds, 0.01);
            var least = lunation.Nights.Max(night => night.LongestRun) * NightSpell.LeastShare;
            Assert.All(nights, night => Assert.True(night.LongestRun >= least && night.LongestRun >= NightSpell.LeastWindow));
        }

        // At 50.5° north the Sun stays above −18° from early June to early July.
        Assert.Contains(Year.Nights, night => night.Night.Month == 6 && night.Longest is null && night.Sky.AstronomicalNight.Count == 0);
    }

    [Fact]
    public void A_subject_that_never_rises_leaves_nothing_to_rank()
    {
        var none = DarkCalendar.Of(new(65, 25), Berlin, new LocalDate(2026, 9, 1), 40, Core);
        Assert.Empty(none.Ranked);
        Assert.All(none.Lunations, lunation => Assert.Null(lunation.Best));
    }

    [Fact]
    public void The_same_night_comes_out_the_same_whatever_calendar_it_is_in() =>
        Gen.Select(Gen.Int[0, 360], Gen.Double[-70, 70]).Sample(
            (day, latitude) =>
            {
                var position = new GeoPosition(latitude, 15);
                var date = new LocalDate(2027, 1, 1).PlusDays(day);
                var alone = DarkCalendar.Of(position, Berlin, date, 1, Core).Nights[0];
                var among = DarkCalendar.Of(position, Berlin, date.PlusDays(-3), 6, Core).Nights[3];
                Assert.Equal(alone.Sky.ShootingWindows, among.Sky.ShootingWindows);
                Assert.Equal(alone.Sky.MoonUpWindows, among.Sky.MoonUpWindows);
            },
            iter: 20);

    [Theory]
    [InlineData(0)]
    [InlineData(3661)]
    public void A_number_of_nights_out_of_range_is_refused(int nights) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DarkCalendar.Of(Rhoen, Berlin, new LocalDate(2026, 1, 1), nights, Core));
}
