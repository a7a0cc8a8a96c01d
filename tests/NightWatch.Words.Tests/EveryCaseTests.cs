using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Words.Tests;

/// <summary>Every case that a plan can hold has its words; those with units, in both systems.</summary>
public sealed class EveryCaseTests
{
    private static readonly Instant Evening = Instant.FromUtc(2027, 3, 6, 21, 0);

    private static readonly Instant Morning = Instant.FromUtc(2027, 3, 7, 3, 30);

    private static readonly Interval Run = new(Evening, Morning);

    private static readonly Speech Metric = new(English.Instance, UnitSystem.Metric, DateTimeZone.Utc);

    private static readonly Speech Imperial = new(English.Instance, UnitSystem.Imperial, DateTimeZone.Utc);

    private static readonly Reason[] Reasons =
    [
        new ThunderChance(Severity.Caution, Run, 0.15, Evening, new(0.1, 0.25)),
        new ThunderNotKnown(Severity.Ok, Run, 0.1),
        new InHarmsWay(Severity.Caution, new Caution.IcyRoad(IsLikely: true)),
        new RunLength(Severity.Ok, Run, 90) { UsableMin = 250 },
        new UsableNight(Severity.Caution, 0.5, 1.0 / 3, 2.0 / 3),
        new CloudMean(Severity.Ok, Run, 0.1, 0.2, Evening, new(0.2, 0.45), 0),
        new CloudNotKnown(Severity.Caution, Run, 0.2),
        new RainAmount(Severity.Stop, Run, 5.08, 0.1),
        new RainNotKnown(Severity.Caution, Run, 0.1),
        new RainChance(Severity.Ok, Run, 0.1, Evening, new(0.25, 0.5)),
        new RainChanceNotKnown(Severity.Ok, Run, 0.25),
        new Gusts(Severity.Caution, Run, 11.6, Evening, new(9, 14)),
        new GustsFromMeanWind(Severity.Caution, Run, 7, 11.6, new(9, 14)),
        new WindNotKnown(Severity.Caution, Run, 9), new FogShare(Severity.Ok, Run, 0.05, new(0.1, 0.4)),
        new FogRuledOut(Run, 2.5, 0.1),
        new FogNotKnown(Severity.Caution, Run, 0.1),
        new MoonLight(Severity.Ok, Run, 0.02, 0.01, Evening) { LostShare = 0.12, IsEclipsed = true },
        new SiteGlow(Severity.Ok, false, 21.4, 21.1, 21.7, new PathDome("Tsumeb", 35_000, 86, 12, 0.2, 40, Evening), 0.1)
        {
            Contrast = new(0.5, 0.8, Morning),
        },
        new NeverDark(-9.1, Evening, -18),
        new DewNotKnown(Severity.Caution, Run),
        new LensStaysDry(Run, 3.1, 3.1),
        new DewOnBareLens(Run, -1.5, IsFrost: false, Evening),
        new DewHeldOff(Run, 2, IsFrost: true, Evening, 4),
        new DewAfterHeater(Severity.Caution, Run, -1, IsFrost: false, Evening, 4, Morning),
        new DewThroughHeater(Run, -0.5, IsFrost: false, Evening, 1, Morning),
        new GroundNotKnown(Severity.Ok, new RainBefore(null, 12, 72)),
        new GroundWetness(Severity.Caution, GroundKind.Clay, GroundState.Wet, GroundState.Damp, 2.54, Morning, 3),
        new InFrame(Severity.Caution, 0.6, IsProgrammed: true, new Heading(135, 22), Run, 0.2, 0.1),
        new SubjectTooLow(new Subject.GalacticCore(), 6.2, 10),
        new NeverUpInTheDark(new Subject.FixedPoint("The loop", 84, -5), Run, Run, 10, 60, 90),
        new SkyWashedOut(Run, 15, 6400, 0.7, 0.5, Evening, SkyLift.Moon, 12),
        new SkyLevelHeld(15, 3200, 0.1, 0.2, 0.5, Morning, SkyLift.Twilight),
        new PacksInUnknownCold(40), new PacksTooCold(-25, -20, 10, 40),
        new PacksRunOut(Severity.Caution, Run, Morning, -5, 20, 40),
        new PacksLast(8, 60, 40, HasReserve: true), new CardRoom(Severity.Ok, 850, 30, 25.5, 119, 3900, null),
        new SecondForecast(Severity.Caution, Run, 0.6, 0.1, IsUsable: false, 0.3), new NoForecast(),
        new ForecastAge(Severity.Caution, 40, 18),
        new CoarseForecast(3, 18), new TooFarAhead(140, 120, 3, 18),
        new Recorded(Factor.Wind, Severity.Ok, null, 5.4, 9, Unit.MetresPerSecond, "Gusts up to 5.4 m/s."),
    ];

    private static readonly Mend[] Mends =
    [
        new Mend.Heater(3, Evening), new Mend.HeaterEnergy(12), new Mend.Packs(20), new Mend.WarmPacks(), new Mend.Card(32),
        new Mend.OtherAim(new Heading(175, 40), Evening, OrShorter: true), new Mend.LessExposure(), new Mend.FirmSpots(),
        new Mend.ShorterRun(), new Mend.DarkerSite(20.8),
        new Mend.CloudAtMost(0.2, 90), new Mend.CloudBelow(0.45, 90), new Mend.FogBelow(0.1), new Mend.GustsBelow(9),
        new Mend.MeanWindBelow(5.4), new Mend.DryFor(90),
        new Mend.ChanceBelow(0.25), new Mend.MoonDown([new MoonTurn(Evening, false)]), new Mend.OtherDate(), new Mend.NightWithoutIt(),
        new Mend.NearerNight(120),
        new Mend.Knowledge(Mend.Missing.Thunder),
    ];

    private static readonly Caution[] Cautions =
    [
        new Caution.ThunderNotTold(), new Caution.Thunder(HazardLevel.Stop, 0.3), new Caution.Flood(HazardLevel.Care, 10.16),
        new Caution.Cold(HazardLevel.Care, -40, 5),
        new Caution.Heat(HazardLevel.Care, 35, HeatDanger.Exhaustion), new Caution.Gusts(HazardLevel.Stop, 20),
        new Caution.IcyRoad(IsLikely: false),
        new Caution.FoggyRoad(152.4, IsDense: true), new Caution.LongAwake(18.4), new Caution.ColdCells(HazardLevel.Care, -20),
        new Caution.CarbonMonoxide(),
    ];

    private static readonly TimelineEntry[] Entries =
    [
        new TimelineEntry.Bare(Evening, TimelineStep.CivilDusk), new TimelineEntry.Nap(Evening, Morning, 21.5),
        new TimelineEntry.LeaveHome(Evening, 70, Morning),
        new TimelineEntry.Arrive(Evening, 75, InDaylight: false), new TimelineEntry.FocusAndTest(Evening, 0.5, 102_400, HasMove: true),
        new TimelineEntry.DriveHome(Morning, 21.5, IsTooLong: true), new TimelineEntry.MoonTurns(Evening, Rises: true, 0.4),
        new TimelineEntry.SubjectLimit(Evening, Clears: true, 10), new TimelineEntry.SubjectHighest(Evening, 20.6),
        new TimelineEntry.HeaterOn(Evening, 2, IsFrost: false, 0.9),
        new TimelineEntry.DewOnset(Evening, IsFrost: true), new TimelineEntry.HeaterEmpty(Evening, IsFrost: true),
        new TimelineEntry.FirstFrame(Evening, 850, 15, 18, 35.4, 24),
        new TimelineEntry.LastFrame(Morning, LastFrameCause.WishMet, 30), new TimelineEntry.SkyTooBright(Evening, 12, SkyLift.Moon, 0.5),
        new TimelineEntry.CardFull(Evening, 400), new TimelineEntry.SubjectLeaves(Evening, 0.6, IsProgrammed: false),
    ];

    private static readonly PackItem[] Items =
    [
        new PackItem.Camera(), new PackItem.HeadLamp(), new PackItem.Cards(25.5, 850, 4), new PackItem.Batteries([14.4, 14.4], 12),
        new PackItem.Heater(4, 60, 5),
        new PackItem.HandWarmer(), new PackItem.WarmClothes(-5, IsFreezing: true), new PackItem.WarmSpares(), new PackItem.Weight(11.6),
        new PackItem.Waterproofs(IsWet: true),
        new PackItem.Provisions(),
    ];

    [Theory]
    [InlineData(0.25, false, "25 % of it is below the skyline.")]
    [InlineData(0, true, "the subject stands too high for any foreground.")]
    [InlineData(0.1, true, "10 % of it is below the skyline, as the subject stands too high for the 20 % to 33 % wished.")]
    [InlineData(0.5, true, "50 % of it is below the skyline, as no heading that keeps the subject shows the 20 % to 33 % wished.")]
    public void A_still_camera_says_why_there_is_no_foreground(double share, bool isMissed, string end) =>
        Assert.EndsWith(
            end,
            Metric.Of(
                new InFrame(Severity.Ok, 1, IsProgrammed: false, new Heading(135, 22), Run, share, share)
                {
                    ForegroundMissed = isMissed ? new(0.2, 0.333) : null,
                }),
            StringComparison.Ordinal);

    [Fact]
    public void No_case_is_left_without_words()
    {
        Complete(Reasons, Metric.Of);
        Complete(Mends, mend => English.Instance.Of(mend, Metric));
        Complete(Cautions, Metric.Of);
        Complete(Entries, Metric.Title);
        Complete(Items, Metric.Of);
        Assert.All(Entries, entry => Assert.NotNull(Metric.Why(entry)));
        Assert.All(
            Enum.GetValues<Mend.Missing>(),
            missing => Assert.EndsWith(".", English.Instance.Of(new Mend.Knowledge(missing), Metric), StringComparison.Ordinal));
        var titles = Enum.GetValues<TimelineStep>().Select(step => Metric.Title(new TimelineEntry.Bare(Evening, step)));
        Assert.Equal(Enum.GetValues<TimelineStep>().Length, titles.Distinct().Count());
        Assert.Equal(Enum.GetValues<Formula>().Length, Enum.GetValues<Formula>().Select(Metric.Of).Distinct().Count());
    }

    [Fact]
    public void A_gust_and_its_limits_are_told_in_the_readers_units()
    {
        var gusts = new Gusts(Severity.Caution, Run, 11.6, Evening, new(9, 14)) { Mend = new Mend.GustsBelow(9) };

        Assert.Equal(
            "Gusts reach 11.6 m/s around 21:00; a frame counts in full up to 9 m/s and for nothing from 14 m/s.", Metric.Of(gusts));
        Assert.Equal(
            "Gusts reach 26 mph around 21:00; a frame counts in full up to 20 mph and for nothing from 31 mph.", Imperial.Of(gusts));
        Assert.Equal("Gusts below 20 mph through the run, or a place in the lee.", Imperial.Fix(gusts));
    }

    [Theory]
    [InlineData("Up to 0.4 in of rain in an hour", "15 cm of moving water", "6 in of moving water")]
    public void Rain_and_the_depths_of_a_flood_are_told_in_the_readers_units(string rain, string metricDepth, string depth)
    {
        var flood = new Caution.Flood(HazardLevel.Stop, 10.16);

        Assert.Contains(metricDepth, Metric.Of(flood), StringComparison.Ordinal);
        Assert.StartsWith(rain, Imperial.Of(flood), StringComparison.Ordinal);
        Assert.Contains(depth, Imperial.Of(flood), StringComparison.Ordinal);
    }

    [Fact]
    public void A_difference_of_temperatures_is_no_temperature()
    {
        var dew = new DewOnBareLens(Run, -1.5, IsFrost: false, Evening);

        Assert.Contains("comes 1.5 °C below its dew point", Metric.Of(dew), StringComparison.Ordinal);
        Assert.Contains("comes 2.7 °F below its dew point", Imperial.Of(dew), StringComparison.Ordinal);
        Assert.StartsWith("Wind chill falls to −40 °F", Imperial.Of(new Caution.Cold(HazardLevel.Care, -40, 5)), StringComparison.Ordinal);
        Assert.StartsWith(
            "Below −4 °F the packs are not to be relied on: at −13 °F",
            Imperial.Of(new PacksTooCold(-25, -20, 10, 40)),
            StringComparison.Ordinal);
    }

    // NWS/NOAA: 30 seconds, 30 minutes. Nothing may be called safe.
    [Fact]
    public void Thunder_is_told_with_the_thirty_thirty_rule_and_nothing_as_safe()
    {
        var thunder = Metric.Of(new Caution.Thunder(HazardLevel.Stop, 0.3));

        Assert.Contains("30 seconds", thunder, StringComparison.Ordinal);
        Assert.Contains("30 minutes after the last thunder", thunder, StringComparison.Ordinal);
        Assert.All(Cautions, caution => Assert.DoesNotContain("safe at", Metric.Of(caution), StringComparison.OrdinalIgnoreCase));
    }

    // Environment Canada's table.
    [Theory]
    [InlineData(10, "bare skin may freeze in 10 minutes")]
    [InlineData(2, "bare skin may freeze in 2 minutes")]
    [InlineData(1, "bare skin may freeze in less than two minutes")]
    public void Cold_is_told_with_the_time_it_takes(double minutes, string words) =>
        Assert.Contains(words, Metric.Of(new Caution.Cold(HazardLevel.Care, -42, minutes)), StringComparison.Ordinal);

    [Fact]
    public void A_hazard_on_its_own_closes_with_deference_to_authorities_and_a_recorded_one_as_it_was()
    {
        var hazard = new InHarmsWay(Severity.Stop, new Caution.Gusts(HazardLevel.Stop, 20));
        var said = $"Gusts. {English.Instance.Deference}";
        var recorded = new Recorded(Factor.Hazard, Severity.Stop, null, null, null, Unit.Count, said);

        Assert.EndsWith(English.Instance.Deference, Metric.Whole(hazard), StringComparison.Ordinal);
        Assert.DoesNotContain(English.Instance.Deference, Metric.Of(hazard), StringComparison.Ordinal);
        Assert.Equal(said, Metric.Whole(recorded));
    }

    [Fact]
    public void A_chance_that_was_learnt_tells_from_what_and_what_the_prior_alone_would_say()
    {
        var chance = new Probability(0.75, ProbabilityBasis.LaggedRuns, 4)
        {
            Usable = 3,
            IsLowered = true,
            Uncalibrated = 0.9,
            CalibrationVersion = 3,
            CalibratedBy = 80,
        };

        Assert.EndsWith(
            " Lowered because a second feed disagrees. The model has learnt from 80 nights of this feed at this lead (version 3); " +
            "without them it would say 90 %.",
            English.Instance.Of(chance), StringComparison.Ordinal);
    }

    private static void Complete<T>(IReadOnlyList<T> samples, Func<T, string> say)
        where T : notnull
    {
        var cases = typeof(T).Assembly.GetExportedTypes().Where(type => type.IsSubclassOf(typeof(T))).Select(type => type.Name).Order();
        Assert.Equal(cases, samples.Select(sample => sample.GetType().Name).Distinct().Order());
        Assert.All(samples, sample => Assert.False(string.IsNullOrWhiteSpace(say(sample))));
    }
}
