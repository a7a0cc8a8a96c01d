using CsCheck;
using NightWatch.Delivery.Outbox;
using NodaTime;

namespace NightWatch.Delivery.Tests.Outbox;

public sealed class RetryScheduleTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 4, 18, 0);
    private static readonly Instant Far = Now + Duration.FromDays(2);

    // Common practice of relays, no source: two quick tries, then half-hourly (RFC 5321, 4.5.4.1 asks for 30 minutes and leaves it
    // settable).
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 6)]
    [InlineData(3, 15)]
    [InlineData(4, 30)]
    public void The_first_tries_come_at_fixed_steps(int attempt, int minutes) =>
        Assert.Equal(Now + Duration.FromMinutes(minutes), RetrySchedule.Next(42, attempt, Now, Far));

    [Fact]
    public void A_greylist_is_not_hurried() =>
        Assert.Equal(Now + Duration.FromMinutes(6), RetrySchedule.Next(42, 1, Now, Far, greylisted: true));

    [Fact]
    public void Later_tries_spread_within_a_fifth_of_half_an_hour_and_are_the_same_each_time() =>
        Gen.Select(Gen.Long[1, 1_000_000], Gen.Int[5, 30]).Sample((id, attempt) =>
        {
            var wait = (RetrySchedule.Next(id, attempt, Now, Far) - Now).TotalMinutes;
            return wait is >= 24 and <= 36 && wait == (RetrySchedule.Next(id, attempt, Now, Far) - Now).TotalMinutes;
        });

    [Fact]
    public void Neighbouring_letters_do_not_come_back_together()
    {
        var waits = Enumerable.Range(1, 1000).Select(id => (RetrySchedule.Next(id, 5, Now, Far) - Now).TotalMinutes).ToList();

        Assert.InRange(waits.Average(), 29.7, 30.3);
        Assert.InRange(waits.Count(wait => wait < 27), 200, 300); // a quarter of an even spread
    }

    [Fact]
    public void A_try_that_would_come_too_late_is_made_just_before_the_end()
    {
        var end = Now + Duration.FromMinutes(10);

        Assert.Equal(end - Duration.FromMinutes(1), RetrySchedule.Next(42, 3, Now, end));
        Assert.Equal(end - Duration.FromMinutes(1), RetrySchedule.AfterAmbiguous(Now + Duration.FromMinutes(5), end));
    }

    [Fact]
    public void There_is_only_one_last_chance()
    {
        var end = Now + Duration.FromSeconds(30);

        Assert.True(RetrySchedule.Next(42, 3, Now, end) > end);
    }
}
