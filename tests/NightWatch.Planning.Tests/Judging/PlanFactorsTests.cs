using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Judging;

/// <summary>Factors that follow from the plan: ground, frame, sky level, power, cards, hazards.</summary>
public sealed class PlanFactorsTests
{
    [Fact]
    public void Wet_ground_is_a_caution_and_a_stop_where_dry_ground_is_needed()
    {
        // Heavy rain until two hours before the run, then dry.
        var soaked = new DesertNight { Weather = new() { Rain = But(0, 0, 5, 6), Cloud = But(0, 0, 5, 1) }, AntecedentRainMm = 40 };
        var needed = soaked with { Watch = soaked.Watch with { Limits = new Limits { DryGroundNeeded = true } } };

        Assert.Equal(GroundState.Wet, soaked.Plan().Ground!.AtStart);
        Assert.Equal(Severity.Caution, Of(soaked, Factor.Ground).Severity);
        Assert.Equal(Severity.Stop, Of(needed, Factor.Ground).Severity);
        Assert.Contains(new PackItem.Waterproofs(IsWet: true), soaked.Plan().Packing);
    }

    [Fact]
    public void Ground_without_a_record_of_rain_is_unknown_and_decides_only_where_dry_ground_is_needed()
    {
        var night = new DesertNight { AntecedentRainMm = null };
        var needed = night with { Watch = night.Watch with { Limits = new Limits { DryGroundNeeded = true } } };

        Assert.Equal((Severity.Ok, true), (Of(night, Factor.Ground).Severity, Of(night, Factor.Ground).IsUnknown));
        Assert.Equal((Severity.Caution, VerdictClass.Marginal), (Of(needed, Factor.Ground).Severity, needed.Plan().Verdict.Class));
    }

    [Fact]
    public void A_move_that_loses_the_subject_is_a_caution_with_a_better_end()
    {
        var away = Moved(new Heading(180, 60), new Heading(290, 20));

        Assert.Equal(Severity.Caution, Of(away, Factor.Frame).Severity);
        Assert.NotNull(away.Plan().Framing!.BetterEnd);
        Assert.Equal(away.Plan().Framing!.BetterEnd, Assert.IsType<Mend.OtherAim>(Of(away, Factor.Frame).Mend).End);
    }

    [Fact]
    public void A_move_that_follows_its_better_end_keeps_the_subject_longer()
    {
        var away = Moved(new Heading(180, 60), new Heading(290, 20));
        var better = Moved(new Heading(180, 60), away.Plan().Framing!.BetterEnd!.Value);

        Assert.True(better.Plan().Framing!.ShareIn > away.Plan().Framing!.ShareIn);
    }

    [Fact]
    public void Moonlight_that_passes_the_level_names_the_last_sound_frame()
    {
        // Three magnitudes are sixteen times the light: 15 % of saturation would pass half of it.
        var night = new DesertNight { MoonBrightening = hour => hour >= 24 ? 3 : 0 };
        night = night with { Watch = night.Watch with { Kit = new Kit { FNumber = 1.4, Iso = 12_800 }, Limits = new Limits { MoonBrighteningMag = new Threshold(5, 9) } } };
        var plan = night.Plan();

        Assert.Equal(Severity.Caution, Of(night, Factor.SkyLevel).Severity);
        Assert.InRange(plan.SkyLevel!.WashedOutFrom!.Value, Clock(23, 55), Clock(24, 0));
        var lastSound = plan.Sequence!.Span.Start + Duration.FromSeconds((plan.SkyLevel.LastSoundShot!.Value - 1) * plan.Sequence.IntervalS + plan.Sequence.ExposureS);
        Assert.True(lastSound <= plan.SkyLevel.WashedOutFrom);
        Assert.True(lastSound + Duration.FromSeconds(plan.Sequence.IntervalS) > plan.SkyLevel.WashedOutFrom);
    }

    [Fact]
    public void Packs_that_run_out_are_said_with_time_swaps_and_what_is_missing()
    {
        var plan = new DesertNight().Plan();
        var power = plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Power);

        // Twice 14.4 Wh against 4 W for nine hours.
        Assert.NotNull(plan.Power!.Empty);
        Assert.Equal(Severity.Ok, power.Severity);
        Assert.True(Assert.IsType<Mend.Packs>(power.Mend).Wh > 0);
        Assert.Single(plan.Timeline, entry => entry.Step == TimelineStep.SwapBattery);
        Assert.NotNull(plan.Packing.OfType<PackItem.Batteries>().Single().MoreWh);
    }

    [Fact]
    public void Packs_that_do_not_last_a_usable_run_are_a_caution()
    {
        var night = new DesertNight();

        Assert.Equal(Severity.Caution, Of(night with { Watch = night.Watch with { Kit = new Kit { BatteriesWh = [5] } } }, Factor.Power).Severity);
    }

    [Theory]
    [InlineData(32, Severity.Ok)]
    [InlineData(8, Severity.Caution)]
    public void Cards_too_small_name_the_card_that_is_missing_and_are_a_caution_below_a_usable_run(double cardGb, Severity severity)
    {
        var night = new DesertNight();
        var reason = Of(night with { Watch = night.Watch with { Kit = new Kit { CardGb = cardGb } } }, Factor.Storage);

        Assert.Equal(severity, reason.Severity);
        Assert.True(Assert.IsType<Mend.Card>(reason.Mend).Gb > 0);
    }

    [Fact]
    public void Deadly_cold_stops_the_night_and_stands_before_everything_but_thunder()
    {
        var verdict = new DesertNight { Weather = new() { AirC = All(-38), DewPointC = All(-48), Wind = All(8), Gust = All(15), Cloud = All(1) } }.Plan().Verdict;

        Assert.Equal((VerdictClass.NoGo, Factor.Hazard), (verdict.Class, verdict.Deciding.Factor));
        Assert.True(verdict.Deciding.IsHazard);
        Assert.Equal(HazardKind.Cold, Assert.IsType<InHarmsWay>(verdict.Deciding).Caution.Kind);
    }

    [Fact]
    public void A_long_day_is_a_caution_of_the_plan_but_does_not_make_the_night_marginal()
    {
        var plan = new DesertNight().Plan();

        Assert.Contains(plan.Cautions, caution => caution.Kind == HazardKind.Fatigue);
        Assert.Equal(VerdictClass.Go, plan.Verdict.Class);
    }

    private static DesertNight Moved(Heading start, Heading end)
    {
        var night = new DesertNight();
        return night with { Watch = night.Watch with { Move = new Move { Start = start, End = end } } };
    }

    private static Reason Of(DesertNight night, Factor factor) => night.Plan().Verdict.Reasons.Single(reason => reason.Factor == factor);
}
