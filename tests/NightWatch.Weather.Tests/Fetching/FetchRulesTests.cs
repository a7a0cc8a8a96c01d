using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Weather.Tests.Fetching;

public sealed class FetchRulesTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 3, 2, 12, 0);
    private static readonly FetchRules Rules = new();

    private static Instant? Ago(int? minutes) => minutes is { } m ? Now - Duration.FromMinutes(m) : null;

    [Theory]
    [InlineData(null, null, true)]
    [InlineData(null, 1, true)]
    [InlineData(null, -1, false)]
    [InlineData(0, null, true)]
    [InlineData(1, null, true)]
    [InlineData(-1, null, false)]
    [InlineData(1, -1, false)]
    public void A_feed_is_asked_when_its_answer_has_expired_and_nothing_holds_it(int? expiredMinutesAgo, int? heldUntilMinutesAgo, bool mayAsk)
    {
        var known = expiredMinutesAgo is null ? null : new FetchedBody(default, null, Ago(expiredMinutesAgo), Now - Duration.FromHours(2));

        Assert.Equal(mayAsk, Rules.MayAsk(known, Ago(heldUntilMinutesAgo), Now));
    }

    [Theory]
    [InlineData(null, 29, false)]
    [InlineData(null, 30, true)]
    [InlineData(600, 29, false)]
    [InlineData(600, 30, true)]
    public void Without_an_expiry_or_with_one_already_past_it_waits_half_an_hour(int? expiredMinutesAgo, int retrievedMinutesAgo, bool mayAsk) =>
        Assert.Equal(mayAsk, Rules.MayAsk(new FetchedBody(default, null, Ago(expiredMinutesAgo), Ago(retrievedMinutesAgo)!.Value), null, Now));

    [Theory]
    [InlineData(0, null, Freshness.Good)]
    [InlineData(360, 400, Freshness.Good)]
    [InlineData(361, null, Freshness.Stale)]
    [InlineData(0, 1081, Freshness.Stale)]
    [InlineData(1440, null, Freshness.Stale)]
    [InlineData(1441, 0, Freshness.TooOld)]
    public void An_answer_ages_by_its_retrieval_and_by_its_run(int retrievedMinutesAgo, int? issuedMinutesAgo, Freshness freshness) =>
        Assert.Equal(freshness, Rules.Judge(Ago(retrievedMinutesAgo)!.Value, Ago(issuedMinutesAgo), Now));

    [Theory]
    [InlineData(null, false, null)]
    [InlineData(10, false, 10)]
    [InlineData(null, true, 1440)]
    [InlineData(2000, true, 2000)]
    public void A_hold_is_what_the_feed_demands_and_a_day_where_the_operator_must_act(int? demandedMinutes, bool operatorMustAct, int? heldMinutes)
    {
        Duration? demanded = demandedMinutes is { } m ? Duration.FromMinutes(m) : null;

        Assert.Equal(
            heldMinutes is { } h ? Now + Duration.FromMinutes(h) : null,
            Rules.HoldUntil(new Fetched.Unavailable("It is down.", demanded, operatorMustAct), Now));
    }
}
