using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Verdicts;

public sealed class NightVerdictTests
{
    [Fact]
    public void A_clear_calm_dry_night_is_a_go_over_the_whole_dark_subject_time()
    {
        var verdict = new DesertNight().Plan().Verdict;

        Assert.Equal(VerdictClass.Go, verdict.Class);
        Assert.Equal(new Interval(Clock(19, 20), Clock(28, 0)), verdict.Run);
        Assert.All(verdict.Reasons, reason => Assert.Equal(Severity.Ok, reason.Severity));
    }

    [Fact]
    public void A_moonrise_ends_the_run_instead_of_spoiling_it()
    {
        var verdict = new DesertNight { MoonBrightening = hour => hour >= 23 ? 2.5 : 0 }.Plan().Verdict;

        Assert.Equal(VerdictClass.Go, verdict.Class);
        Assert.Equal(new Interval(Clock(19, 20), Clock(23, 0)), verdict.Run);
    }

    [Fact]
    public void Weather_that_stops_the_moonless_hours_is_told_and_not_the_Moon_of_the_later_ones()
    {
        var verdict = new DesertNight
        {
            Weather = new() { Cloud = All(0.9) },
            MoonBrightening = hour => hour >= 23 ? 2.5 : 0,
        }
            .Plan()
            .Verdict;

        Assert.Equal(VerdictClass.NoGo, verdict.Class);
        Assert.Equal(Factor.Cloud, verdict.Deciding.Factor);
        Assert.Equal(new Interval(Clock(19, 20), Clock(23, 0)), verdict.Run);
    }

    [Fact]
    public void The_run_is_not_lengthened_into_cloud()
    {
        // Clear to 23:00, overcast from 24:00: a mean of 20 % would reach far into it.
        var verdict = new DesertNight { Weather = new() { Cloud = But(0, 12, Hours, 1) } }.Plan().Verdict;

        Assert.Equal(VerdictClass.Go, verdict.Class);
        Assert.InRange(verdict.Run!.Value.End, Clock(23, 0), Clock(23, 30));
    }

    [Theory]
    [InlineData(90, VerdictClass.Go)]
    [InlineData(89, VerdictClass.NoGo)]
    public void A_window_shorter_than_the_usable_run_is_a_no_go_by_length(int minutes, VerdictClass expected)
    {
        var verdict = new DesertNight { SubjectWindows = [new Interval(Clock(20, 2), Clock(20, 2) + Duration.FromMinutes(minutes))] }
            .Plan()
            .Verdict;

        Assert.Equal(expected, verdict.Class);
        Assert.Equal(minutes, verdict.Run!.Value.Duration.TotalMinutes);
        if (expected == VerdictClass.NoGo)
            Assert.Equal((Factor.Length, ProbabilityBasis.SkyAlone), (verdict.Deciding.Factor, verdict.Probability.Basis));
    }

    [Fact]
    public void A_night_without_darkness_names_the_twilight_and_has_no_run()
    {
        var plan = new DesertNight { AstronomicalNight = [] }.Plan();

        Assert.Equal((VerdictClass.NoGo, Factor.Twilight), (plan.Verdict.Class, plan.Verdict.Deciding.Factor));
        Assert.Null(plan.Verdict.Run);
        Assert.Null(plan.Sequence);
        Assert.Null(plan.LeaveBy);
        Assert.Equal(0, plan.Verdict.Probability.Value);
    }

    [Fact]
    public void A_night_without_the_subject_names_the_frame() =>
        Assert.Equal(Factor.Frame, new DesertNight { SubjectWindows = [] }.Plan().Verdict.Deciding.Factor);

    [Fact]
    public void A_subject_that_is_up_only_in_twilight_names_both_times()
    {
        var deciding = new DesertNight { SubjectWindows = [new Interval(Clock(18, 30), Clock(19, 10))] }.Plan().Verdict.Deciding;

        var never = Assert.IsType<NeverUpInTheDark>(deciding);
        Assert.Equal((new Interval(Clock(18, 30), Clock(19, 10)), new Interval(Clock(19, 20), Clock(30, 10))), (never.Up, never.Dark));
    }

    [Fact]
    public void Margins_of_the_watch_come_off_the_dark_window()
    {
        var night = new DesertNight();
        night = night with { Watch = night.Watch with { Limits = new Limits { StartMarginMin = 60, EndMarginMin = 180 } } };

        Assert.Equal(new Interval(Clock(20, 20), Clock(27, 10)), night.Plan().Verdict.Run);
    }

    /// <summary>The number of good frames and the chance follow from what the others take.</summary>
    [Fact]
    public void Every_caution_that_takes_something_says_what_would_mend_it()
    {
        var weather = new HourlyWeather
        {
            Cloud = All(0.3),
            Gust = All(10),
            RainProbability = All(0.3),
            Thunder = All(0.15),
            Fog = All(0.2),
            DewPointC = All(11.5),
            Wind = All(0),
        };
        var reasons = new DesertNight { Weather = weather, MoonBrightening = _ => 0.5 }.Plan().Verdict.Reasons;

        Assert.All(
            reasons.Where(reason => reason is { Severity: > Severity.Ok, Factor: not (Factor.Chance or Factor.Length) }),
            reason => Assert.NotNull(reason.Mend));
    }
}
