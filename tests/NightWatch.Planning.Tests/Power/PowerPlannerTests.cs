using NightWatch.Planning.Nights;
using NightWatch.Planning.Tests.HandMade;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.DesertNight;

namespace NightWatch.Planning.Tests.Power;

public sealed class PowerPlannerTests
{
    /// <summary>
    /// Sunset is at 18:00. Up to six hours of waiting one sets up by daylight and tests at nautical dusk, 18:52; with more one arrives for
    /// the first frame. By hand: 4 W for the quarter of an hour of the tests and for the frames, over a converter that lets 0.87 through.
    /// </summary>
    [Theory]
    [InlineData(19)]
    [InlineData(21)]
    [InlineData(23)]
    [InlineData(24)]
    [InlineData(25)]
    public void The_packs_are_charged_for_test_frames_and_sequence_and_not_for_the_wait_between(int hour)
    {
        var plan = new DesertNight { SubjectWindows = [new Interval(Clock(hour, 30), Clock(hour + 3, 0))] }.Plan();

        Assert.Equal(Clock(hour, 30), plan.Sequence!.Span.Start);
        Assert.Equal(4 / 0.87 * (0.25 + plan.Sequence.Span.Duration.TotalHours), plan.Power!.NeedWh, 9);
        Assert.Equal(new Interval(Clock(hour, 15), plan.Sequence.Span.End), plan.Power.On);
    }

    [Fact]
    public void Set_up_by_daylight_and_a_long_wait_leave_as_much_for_the_frames_as_a_late_arrival()
    {
        NightPlan From(int hour, int minute) =>
            new DesertNight { SubjectWindows = [new Interval(Clock(hour, minute), Clock(hour + 4, minute))] }.Plan();
        var (waited, late) = (From(22, 0), From(25, 0));

        Assert.True(
            waited.Timeline.Single(entry => entry.Step == TimelineStep.FocusAndTest).At
                < waited.Sequence!.Span.Start - Duration.FromHours(2));
        Assert.Equal(late.Sequence!.Shots, waited.Sequence.Shots);
        Assert.Equal(late.Power!.NeedWh, waited.Power!.NeedWh, 9);
    }
}
