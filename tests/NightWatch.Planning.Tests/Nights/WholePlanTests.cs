using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;
using static NightWatch.Planning.Tests.HandMade.DesertNight;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Nights;

/// <summary>The parts of a plan beside its verdict: lens with and without heater, sky, move, cards, and a timeline without noise.</summary>
public sealed class WholePlanTests
{
    private static readonly DesertNight Dewy = new() { Weather = new() { DewPointC = All(10), Wind = All(0.5) } };

    [Fact]
    public void A_kit_without_a_heater_is_told_what_one_would_take()
    {
        var lens = Dewy.Plan().Lens!;

        Assert.NotNull(lens.Onset);
        Assert.True(lens.HeaterNeededW > 0 && lens.HeaterOn < lens.Onset);
        Assert.Equal((0, null, null, null), (lens.KitHeaterW, lens.HeatedLeastMarginK, lens.HeatedOnset, lens.HeaterSuffices));
    }

    [Fact]
    public void A_heater_with_battery_enough_keeps_the_lens_clear_and_says_what_it_takes()
    {
        var plan = Heated(Dewy, watts: 4, batteryWh: 60).Plan();
        var lens = plan.Lens!;

        Assert.True(lens.HeaterSuffices);
        Assert.True(lens.HeatedLeastMarginK > 0 && lens.LeastMarginK < 0);
        Assert.True(lens.HeaterNeedWh < lens.HeaterBatteryGivesWh);
        Assert.All(
            plan.Conditions.Where(step => step.LensDewMarginK is not null),
            step => Assert.True(step.LensHeatedDewMarginK >= step.LensDewMarginK));
        Assert.Contains(new PackItem.Heater(4, 60, MoreWh: null), plan.Packing);
    }

    /// <summary>4 W from 5 Wh: at most 5 × 0.9 × 0.87 Wh reach the strap, a little under an hour even in warm air.</summary>
    [Fact]
    public void A_heater_whose_battery_ends_early_does_not_suffice_and_is_a_caution()
    {
        var plan = Heated(Dewy, watts: 4, batteryWh: 5).Plan();

        Assert.False(plan.Lens!.HeaterSuffices);
        Assert.InRange((plan.Lens.HeaterEmpty!.Value - plan.Lens.HeaterOn!.Value).TotalHours, 0.8, 0.98);
        Assert.Contains(plan.Timeline, entry => entry.Step == TimelineStep.HeaterEmpty);
        var dew = plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Dew);
        Assert.Equal(Severity.Caution, dew.Severity);
        Assert.True(Assert.IsType<Mend.HeaterEnergy>(dew.Mend).Wh > 0);
    }

    [Fact]
    public void A_lens_that_comes_out_into_saturated_air_is_dried_by_its_heater_and_stays_clear()
    {
        // Air at 12 °C saturated as set-up ends, then 4 K of distance.
        var plan = Heated(
                new DesertNight
                {
                    Weather = new()
                    {
                        AirC = All(12),
                        DewPointC = But(8, 5, 7, 12),
                        Cloud = But(0, 5, 7, 1),
                        Wind = All(0.5),
                    },
                },
                watts: 6,
                batteryWh: 200)
            .Plan();

        Assert.NotNull(plan.Lens!.Onset);
        Assert.True(plan.Lens.HeaterSuffices);
        Assert.Equal(Severity.Ok, plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Dew).Severity);
    }

    /// <summary>Below −20 °C, the lower end of usual cell specifications, no cell is counted on.</summary>
    [Fact]
    public void Cold_below_the_cells_range_leaves_nothing_to_change_to()
    {
        var plan = new DesertNight { Weather = new() { AirC = All(-25), DewPointC = All(-35) } }.Plan();

        Assert.Equal(0, plan.Power!.AvailableWh);
        Assert.Empty(plan.Power.Swaps);
        Assert.Equal(Severity.Caution, plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Power).Severity);
    }

    [Fact]
    public void The_sky_of_the_site_is_told_with_its_origin_and_never_decides()
    {
        var plan = new DesertNight().Plan();
        var glow = plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Glow);

        Assert.True(plan.SkyBrightness!.IsMeasured);
        Assert.Equal(21.8, plan.SkyBrightness.ZenithMag, 2);
        Assert.Equal(0.2, plan.SkyBrightness.DarkestMag - plan.SkyBrightness.BrightestMag, 6);
        Assert.Equal(Severity.Ok, glow.Severity);
        Assert.Equal((true, Formula.TownsUnderMeasuredZenith), (Assert.IsType<SiteGlow>(glow).IsMeasured, glow.Formula));
    }

    /// <summary>Contrast falls as light is added: 1 mag of moonlight is 2.512 times the light of a sky without it.</summary>
    [Fact]
    public void Moonlight_takes_its_share_of_the_contrast_at_every_step()
    {
        var dark = new DesertNight().Plan();
        var lit = new DesertNight { MoonBrightening = _ => 1 }.Plan();

        Assert.All(
            dark.Conditions.Zip(lit.Conditions),
            pair => Assert.Equal(Math.Pow(10, 0.4), pair.First.Contrast!.Value / pair.Second.Contrast!.Value, 3));
    }

    [Fact]
    public void A_move_is_told_in_steps_a_frame()
    {
        var motion = MotionPlan.Of(
            new Move
            {
                Start = new Heading(350, 20),
                End = new Heading(10, 25),
                EaseIn = 0.5,
                EaseOut = 0.5,
                RailM = 1,
            },
            shots: 101);

        Assert.Equal((20, 0.2, 0.05), (motion.PanDeg, motion.MeanPanDegPerFrame, motion.MeanTiltDegPerFrame));
        Assert.Equal(10, motion.MeanRailMmPerFrame, 9);
        Assert.Equal(1.5, motion.FastestOverMean, 9); // of 3u² − 2u³
        Assert.Equal((50, 50), (motion.EaseInFrames, motion.EaseOutFrames));
    }

    [Fact]
    public void Cards_that_fill_up_are_changed_at_a_clock_time()
    {
        var night = new DesertNight();
        var plan = (night with { Watch = night.Watch with { Kit = new Kit { CardGb = 32 } } }).Plan();

        Assert.Equal((int)(32 * StoragePlan.UsableShare * 1000 / 30), plan.Storage!.ShotsThatFit);
        Assert.Equal(plan.Storage.Full, plan.Timeline.Single(entry => entry.Step == TimelineStep.SwapCard).At);
    }

    [Fact]
    public void Test_frames_come_out_as_bright_as_the_planned_ones_within_half_a_third_stop()
    {
        var sequence = new DesertNight().Plan().Sequence!;

        Assert.InRange(Math.Log2(sequence.TestExposureS * sequence.TestIso / (sequence.ExposureS * sequence.Iso)), -0.5, 0.5);
        Assert.True(sequence.TestExposureS <= sequence.ExposureS);
    }

    [Fact]
    public void A_camera_without_a_move_stands_where_it_keeps_the_subject_and_the_path_has_clock_times()
    {
        var night = new DesertNight();
        var framing = night.Plan().Framing!;
        var aim = framing.Move.Start;

        Assert.False(framing.IsProgrammed);
        Assert.Equal(framing.Path.OrderBy(point => point.At), framing.Path);
        foreach (var (pan, tilt) in new[] { (8, 0), (-8, 0), (0, 8), (0, -8) })
        {
            var other = aim with { AzimuthDeg = aim.AzimuthDeg + pan, AltitudeDeg = Math.Min(85, aim.AltitudeDeg + tilt) };
            var turned = (night with { Watch = night.Watch with { Move = new Move { Start = other, End = other } } }).Plan().Framing!;
            Assert.True(turned.ShareIn <= framing.ShareIn + 0.02); // the search looks at 32 frames
        }
    }

    [Fact]
    public void What_helps_nobody_out_there_is_left_out_of_the_timeline()
    {
        // The run ends at 04:00, home about 05:30; dawn begins at 06:10. The Moon rises at 14:00.
        var plan = new DesertNight { Moonrises = [Clock(14, 0)] }.Plan();

        Assert.DoesNotContain(
            plan.Timeline,
            entry =>
                entry.Step
                    is TimelineStep.AstronomicalDawn
                        or TimelineStep.NauticalDawn
                        or TimelineStep.CivilDawn
                        or TimelineStep.Sunrise
                        or TimelineStep.Moonrise);
        Assert.Contains(plan.Timeline, entry => entry.Step == TimelineStep.AstronomicalDusk);
    }

    [Fact]
    public void A_moonrise_while_the_frames_run_stays_in_the_timeline() =>
        Assert.Contains(new DesertNight { Moonrises = [Clock(26, 0)] }.Plan().Timeline, entry => entry.Step == TimelineStep.Moonrise);

    private static DesertNight Heated(DesertNight night, double watts, double batteryWh) =>
        night with { Watch = night.Watch with { Kit = new Kit { DewHeaterW = watts, DewHeaterBatteryWh = batteryWh } } };
}
