using CsCheck;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Archives;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Archives;

public sealed class ArchiveTrialTests
{
    private static readonly Lazy<IReadOnlyList<ArchivedNight>> month = new(() => October.Try(October.Runs, October.Came));

    [Fact]
    public void A_look_knows_the_newest_run_three_earlier_ones_and_no_later() => Gen.Int[0, 34 * 24 * 60].Sample(
        minutes =>
        {
            var at = Instant.FromUtc(2024, 9, 28, 0, 0) + Duration.FromMinutes(minutes);
            var known = new ArchivedForecastRuns(October.Runs).KnownAt(at);
            var alone = new ArchivedForecastRuns([.. October.Runs.Where(run => run.IssuedAt <= at)]).KnownAt(at);
            Assert.Same(October.Runs.Last(run => run.IssuedAt <= at), known.Newest);
            Assert.Equal(known.Newest, alone.Newest);
            Assert.Equal(known.EarlierRuns, alone.EarlierRuns);
            Assert.Equal(known.Rain, alone.Rain);
            Assert.All(known.Rain, hour => Assert.True(hour.SaidAt <= at));
            Assert.True(known.EarlierRuns.Length <= 3);
            Assert.All(known.EarlierRuns, run => Assert.True(run.IssuedAt < known.Newest!.IssuedAt));
        },
        iter: 25);

    [Fact]
    public void Without_a_run_of_the_last_day_nothing_is_known()
    {
        var first = October.Runs[0].IssuedAt!.Value;
        Assert.Null(new ArchivedForecastRuns(October.Runs).KnownAt(first - Duration.FromMinutes(1)).Newest);
        Assert.Null(new ArchivedForecastRuns([October.Runs[0]]).KnownAt(first + Duration.FromHours(25)).Newest);
        Assert.NotNull(new ArchivedForecastRuns([October.Runs[0]]).KnownAt(first + Duration.FromHours(23)).Newest);
    }

    [Fact]
    public void Runs_after_a_night_change_nothing_about_it()
    {
        var cut = new LocalDate(2024, 10, 12);
        // The last look at a night is when the car would leave, which may be late where the Moon sets late.
        var until = NightSpan.Of(October.Zone, cut).End;
        var without = October.Try([.. October.Runs.Where(run => run.IssuedAt <= until)], October.Came);
        Assert.Equal(month.Value.Where(night => night.Night <= cut).Select(October.Text),
            without.Where(night => night.Night <= cut).Select(October.Text));
        Assert.NotEqual(month.Value.Select(October.Text), without.Select(October.Text));
    }

    [Fact]
    public void What_is_learnt_at_a_look_comes_from_nights_that_were_over_and_none_later()
    {
        var cut = new LocalDate(2024, 10, 12);
        var over = NightSpan.Of(October.Zone, cut).End;
        var later = October.CameWith(hour =>
        {
            if (string.CompareOrdinal((string?)hour["at"], "2024-10-13T16:00Z") >= 0) hour["cloudPercent"] = 100;
        });
        var (whole, other) = (Learning(October.Came), Learning(later));
        var night = cut.PlusDays(1);
        Assert.Equal(11, Nights(whole, over - Duration.FromMinutes(1)));
        Assert.Equal(12, Nights(whole, over));
        Assert.Equal(Said(whole, over), Said(other, over));
        var late = NightSpan.Of(October.Zone, new LocalDate(2024, 10, 25)).End;
        Assert.NotEqual(Said(whole, late), Said(other, late));

        ChanceModel Model(ArchiveChances chances, Instant at) => chances.At(night, at).Of(October.Came.FeedId, 0, October.Watch.Site.Id);

        double Nights(ArchiveChances chances, Instant at) => Model(chances, at).Nights;

        double[] Said(ArchiveChances chances, Instant at) =>
            [.. Model(chances, at).Coefficients(FigureSet.RunsAndRain), Model(chances, at).Climate];
    }

    [Fact]
    public void Every_night_has_looks_at_the_local_hour_of_the_days_before()
    {
        Assert.Equal(Enumerable.Range(0, 31).Select(new LocalDate(2024, 10, 1).PlusDays), month.Value.Select(night => night.Night));
        Assert.All(month.Value, night => Assert.Equal(
            Enumerable.Range(0, 4).Select(lead => night.Night.PlusDays(-lead).At(new LocalTime(15, 0))),
            night.Looks.Select(look => look.At.InZone(October.Zone).LocalDateTime)));
        Assert.Equal(8, October.Try(October.Runs, October.Came, lookHour: 8)[0].Looks[0].At.InZone(October.Zone).Hour);
    }

    [Fact]
    public void A_night_that_the_Moon_decides_is_listed_and_not_scored()
    {
        // Full Moon of 2024-10-17, 11:26 UTC, for who wants more of the sky than stars at its brightest.
        var watch = October.Watch with { Limits = October.Watch.Limits with { DarkFullMag = 21, DarkNothingMag = 20.5 } };
        var nights = new ArchiveTrial(watch, new ArchivedForecastRuns(October.Runs), October.Came, new LocalTime(15, 0))
            .Run(TestContext.Current.CancellationToken);
        var full = nights.Single(night => night.Night == new LocalDate(2024, 10, 17));
        Assert.Equal((NightUse.NotTheWeathers, false, null), (full.Use, full.Usable, full.Letters));
        Assert.All(full.Looks, look => Assert.Equal((VerdictClass.NoGo, ProbabilityBasis.SkyAlone), (look.Class, look.Probability.Basis)));
        Assert.Equal(NightUse.Scored, nights[1].Use);
    }

    [Fact]
    public void What_came_is_judged_by_the_hours_of_the_night_alone()
    {
        var scored = month.Value.Where(night => night.Use == NightUse.Scored).ToList();
        Assert.Contains(scored, night => night.Usable == true);
        Assert.All(October.Try(October.Runs, October.CameWith(hour => hour["cloudPercent"] = 100)),
            night => Assert.NotEqual(true, night.Usable));
        Assert.All(
            October.Try(October.Runs, October.CameWith(hour => (hour["cloudPercent"], hour["rainMm"], hour["gustMps"], hour["dewPointC"])
                = (0, 0, 2, -10))),
            night => Assert.Equal(night.Use == NightUse.Scored, night.Usable));
    }

    [Fact]
    public void An_unknown_cloud_in_the_dark_leaves_the_night_unscored_and_one_by_day_does_not()
    {
        var gap = October.Try(October.Runs, October.CameWith(hour =>
        {
            if ((string?)hour["at"] is "2024-10-05T04:00Z" or "2024-10-06T20:00Z") hour["cloudPercent"] = null;
        }));
        var night = Assert.Single(gap, night => night.Use == NightUse.CloudUnknown);
        Assert.Equal((new LocalDate(2024, 10, 4), null, null), (night.Night, night.Usable, night.Letters));
        Assert.All(night.Looks, look => Assert.False(night.IsScored(look)));
    }

    [Fact]
    public void Unknown_rain_and_wind_take_nothing_from_a_night()
    {
        var without = October.Try(October.Runs, October.CameWith(hour => (hour["rainMm"], hour["gustMps"]) = (null, null)));
        Assert.Equal(month.Value.Select(night => night.Use), without.Select(night => night.Use));
        Assert.All(month.Value.Zip(without).Where(pair => pair.First.Usable == true), pair => Assert.True(pair.Second.Usable));
        Assert.All(without,
            night => Assert.Equal((night.Use == NightUse.Scored, night.Use == NightUse.Scored), (night.RainUnknown, night.GustUnknown)));
        Assert.All(month.Value, night => Assert.Equal((false, false), (night.RainUnknown, night.GustUnknown)));
    }

    [Fact]
    public void The_forecast_cloud_of_the_dark_is_the_mean_of_its_whole_hours()
    {
        // Newest run at 15:00 of the day: that of 16:00 UTC (12:00 local).
        var night = month.Value.Single(night => night.Night == new LocalDate(2024, 10, 3));
        var run = October.Runs.Last(run => run.IssuedAt <= night.Looks[0].At);
        var span = NightSpan.Of(October.Zone, night.Night);
        // Astronomical twilight ended at 20:01 and begins at 05:24 EDT: 00:00 to 09:00 UTC would take one hour too many.
        var values = Enumerable.Range(0, 24).Select(hour => span.Start + Duration.FromHours(hour))
            .Where(at => at >= Instant.FromUtc(2024, 10, 4, 1, 0) && at <= Instant.FromUtc(2024, 10, 4, 9, 0))
            .Select(at => run.At(Weather.Series.InstantQuantity.CloudAreaFraction, at).Value!.Value).ToList();
        Assert.Equal(9, values.Count);
        Assert.Equal(values.Average(), night.Looks[0].DarkCloud!.Value, 12);
    }

    private static ArchiveChances Learning(Weather.Series.ForecastSeries came) =>
        ArchiveChances.Of(
            PriorChoice.Shipped,
            isLearning: true,
            October.Watch,
            October.Watch,
            new ArchivedForecastRuns(October.Runs),
            came,
            new LocalTime(15, 0),
            TestContext.Current.CancellationToken)!;
}
