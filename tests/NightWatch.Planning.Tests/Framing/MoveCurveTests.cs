using CsCheck;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Framing;

public sealed class MoveCurveTests
{
    [Fact]
    public void Eased_half_and_half_it_is_the_smooth_step() =>
        Gen.Double[0, 1].Sample(u => Assert.Equal(3 * u * u - 2 * u * u * u, MoveCurve.Done(u, 0.5, 0.5), 1e-12));

    [Fact]
    public void Without_easing_it_is_a_straight_line() => Gen.Double[0, 1].Sample(u => Assert.Equal(u, MoveCurve.Done(u, 0, 0), 1e-12));

    [Fact]
    public void It_never_runs_back_and_ends_where_it_should() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[0, 0.5], Gen.Double[0, 1], Gen.Double[0, 0.2]).Sample((easeIn, easeOut, u, more) =>
        {
            Assert.True(MoveCurve.Done(u + more, easeIn, easeOut) >= MoveCurve.Done(u, easeIn, easeOut) - 1e-12);
            Assert.Equal(0, MoveCurve.Done(0, easeIn, easeOut), 1e-12);
            Assert.Equal(1, MoveCurve.Done(1, easeIn, easeOut), 1e-12);
        });

    [Fact]
    public void The_highest_speed_eased_half_and_half_is_one_and_a_half_times_the_mean() =>
        Assert.Equal(1.5, MoveCurve.HighestSpeed(0.5, 0.5), 12);

    [Theory]
    [InlineData(350, 10, 0.5, 0)]
    [InlineData(10, 350, 0.25, 5)]
    [InlineData(100, 140, 0.5, 120)]
    public void Azimuth_goes_the_shorter_way_round(double start, double end, double time, double azimuth)
    {
        var move = new Move { Start = new Heading(start, 10), End = new Heading(end, 20) };
        var there = MoveCurve.HeadingAt(move, time);
        Assert.Equal(azimuth, there.AzimuthDeg, 9);
        Assert.Equal(10 + 10 * time, there.AltitudeDeg, 9);
    }
}
