using NightWatch.Service.Commands.Checks;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Checks;

public sealed class ClockWitnessesTests
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 3, 4, 12, 0);

    /// <summary>The header names the second that began before it was written, somewhere between question and answer.</summary>
    [Theory]
    [InlineData(0, 0.0, 0.2, 0.0)]
    [InlineData(0, 0.9, 1.0, 0.0)]
    [InlineData(-3, 0.0, 0.2, 2.0)]
    [InlineData(600, 0.0, 4.0, 596.0)]
    public void The_least_difference_is_what_no_delay_or_rounding_explains(int header, double asked, double answered, double atLeast)
    {
        var witnesses = new ClockWitnesses(new FakeClock(Noon));

        witnesses.Note(
            "feed.example.org",
            Noon + Duration.FromSeconds(header),
            Noon + Duration.FromSeconds(asked),
            Noon + Duration.FromSeconds(answered));

        Assert.Equal(atLeast, witnesses.Best!.AtLeast.TotalSeconds, 6);
    }

    [Fact]
    public void The_quickest_answer_is_believed_and_nobody_s_is_none()
    {
        var witnesses = new ClockWitnesses(new FakeClock(Noon));
        Assert.Null(witnesses.Best);

        witnesses.Note("slow.example.org", Noon, Noon, Noon + Duration.FromSeconds(9));
        witnesses.Note("quick.example.org", Noon, Noon, Noon + Duration.FromSeconds(0.1));

        Assert.Equal("quick.example.org", witnesses.Best!.Who);
    }

    [Fact]
    public void A_clock_that_is_set_meanwhile_is_caught_by_the_monotonic_one()
    {
        var clock = new FakeClock(Noon);
        var witnesses = new ClockWitnesses(clock);

        clock.Advance(Duration.FromMinutes(3));

        Assert.InRange(witnesses.Jumped.TotalSeconds, 170, 180);
    }
}
