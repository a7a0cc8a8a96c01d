using NightWatch.Planning.Nights;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;

namespace NightWatch.Planning.Tests.Nights;

public sealed class TimelineTests
{
    [Fact]
    public void Every_step_stands_in_order_from_the_nap_to_the_drive_home()
    {
        var plan = new DesertNight { Weather = new() { DewPointC = HourlyWeather.All(10), Wind = HourlyWeather.All(0.5) } }.Plan();

        Assert.Equal(plan.Timeline.OrderBy(entry => entry.At).Select(entry => entry.Step), plan.Timeline.Select(entry => entry.Step));
        TimelineStep[] order =
        [
            TimelineStep.Sleep, TimelineStep.Pack, TimelineStep.LeaveHome, TimelineStep.Arrive, TimelineStep.Sunset, TimelineStep.CivilDusk,
            TimelineStep.NauticalDusk, TimelineStep.FocusAndTest, TimelineStep.Start, TimelineStep.SubjectTransit, TimelineStep.LastFrame,
            TimelineStep.DriveHome,
        ];
        Assert.Equal(order, plan.Timeline.Select(entry => entry.Step).Where(order.Contains));
        Assert.Contains(plan.Timeline, entry => entry.Step == TimelineStep.DewOnset);
    }

    [Fact]
    public void Set_up_ends_before_sunset_where_the_wait_is_bearable()
    {
        // Sunset 18:00, run from 19:20, an hour of set-up, an hour's drive, a quarter of an hour in hand.
        var plan = new DesertNight().Plan();

        Assert.Equal(Clock(16, 45), At(plan, TimelineStep.Arrive));
        Assert.Equal(Clock(15, 45), At(plan, TimelineStep.LeaveHome));
        Assert.Equal(Clock(15, 45), plan.LeaveBy);
        Assert.Equal(Clock(18, 52), At(plan, TimelineStep.FocusAndTest)); // nautical dusk
    }

    [Fact]
    public void A_run_late_in_the_night_is_not_waited_for_since_sunset()
    {
        var plan = new DesertNight { SubjectWindows = [new Interval(Clock(26, 0), Clock(30, 0))] }.Plan();

        Assert.Equal(Clock(24, 45), At(plan, TimelineStep.Arrive)); // set-up an hour, test frames a quarter
        Assert.False(plan.Timeline.OfType<TimelineEntry.Arrive>().Single().InDaylight);
    }

    [Fact]
    public void Leaving_on_time_always_leaves_room_for_set_up_before_the_run()
    {
        foreach (var (drive, setUp) in new[] { (5.0, 10.0), (180, 120), (20, 240) })
        {
            var night = new DesertNight();
            var plan = (night with { Watch = night.Watch with { Outing = new Outing { DriveMin = drive, SetUpMin = setUp } } }).Plan();

            Assert.True(plan.LeaveBy + Duration.FromMinutes(drive + setUp) <= plan.Verdict.Run!.Value.Start);
        }
    }

    /// <summary>
    /// Williamson and Feyer 2000: from 17 h awake as at 0.05 % blood alcohol. Up at 07:00, home-bound about 04:30: 21.5 h.
    /// </summary>
    [Fact]
    public void A_drive_home_after_a_day_awake_carries_the_caution()
    {
        var home = new DesertNight().Plan().Timeline.OfType<TimelineEntry.DriveHome>().Single();

        Assert.Equal(Clock(28, 30), home.At, new CloseInstants(Duration.FromMinutes(1)));
        Assert.Equal(21.5, home.AwakeH, 1);
        Assert.True(home.IsTooLong);
    }

    [Fact]
    public void A_night_without_a_run_still_tells_what_the_sky_does()
    {
        var plan = new DesertNight { AstronomicalNight = [] }.Plan();

        Assert.Equal(VerdictClass.NoGo, plan.Verdict.Class);
        Assert.Contains(plan.Timeline, entry => entry.Step == TimelineStep.Sunset);
        Assert.DoesNotContain(plan.Timeline, entry => entry.Step is TimelineStep.Start or TimelineStep.LeaveHome or TimelineStep.DriveHome);
    }

    private static Instant At(NightPlan plan, TimelineStep step) => plan.Timeline.Single(entry => entry.Step == step).At;

    private sealed class CloseInstants(Duration within) : IEqualityComparer<Instant>
    {
        public bool Equals(Instant x, Instant y) => x - y <= within && y - x <= within;

        public int GetHashCode(Instant obj) => 0;
    }
}
