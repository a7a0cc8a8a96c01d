using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NightWatch.Weather.Series;
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
    public void A_feed_is_asked_when_its_answer_has_expired_and_nothing_holds_it(
        int? expiredMinutesAgo, int? heldUntilMinutesAgo, bool mayAsk)
    {
        var known = expiredMinutesAgo is null ? null : new FetchedHead(null, Ago(expiredMinutesAgo), Now - Duration.FromHours(2));

        Assert.Equal(mayAsk, Rules.MayAsk(known, Ago(heldUntilMinutesAgo), Now));
    }

    [Theory]
    [InlineData(null, 29, false)]
    [InlineData(null, 30, true)]
    [InlineData(600, 29, false)]
    [InlineData(600, 30, true)]
    public void Without_an_expiry_or_with_one_already_past_it_waits_half_an_hour(
        int? expiredMinutesAgo,
        int retrievedMinutesAgo,
        bool mayAsk
    ) => Assert.Equal(mayAsk, Rules.MayAsk(new FetchedHead(null, Ago(expiredMinutesAgo), Ago(retrievedMinutesAgo)!.Value), null, Now));

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
    public void A_hold_is_what_the_feed_demands_and_a_day_where_the_operator_must_act(
        int? demandedMinutes, bool operatorMustAct, int? heldMinutes)
    {
        Duration? demanded = demandedMinutes is { } m ? Duration.FromMinutes(m) : null;

        Assert.Equal(
            heldMinutes is { } h ? Now + Duration.FromMinutes(h) : null,
            Rules.HoldUntil(new Fetched.Unavailable("It is down.", demanded, operatorMustAct), Now));
    }

    private static ForecastSeries Run(long id, int? issuedHoursAgo, int retrievedHoursAgo)
    {
        var series = new ForecastSeriesBuilder().Build(
            "fake", "test", issuedHoursAgo is { } h ? Now - Duration.FromHours(h) : null, Now - Duration.FromHours(retrievedHoursAgo),
            new Attribution("t", new Uri("https://example.org/"), "l"), new ForecastCell(0, 0, null));
        return series.KeptAs(id, series.RetrievedAt);
    }

    [Fact]
    public void One_run_seen_twice_is_one_run() =>
        Assert.Equal(
            [5L, 3, 1], Rules.Distinct([Run(5, 3, 0), Run(4, 3, 1), Run(3, 9, 6), Run(2, 9, 8), Run(1, 15, 12)], 4).Select(r => r.Id));

    [Fact]
    public void Without_issue_times_answers_hours_apart_are_runs() =>
        Assert.Equal(
            [5L, 2, 1],
            Rules.Distinct([Run(5, null, 0), Run(4, null, 1), Run(3, null, 3), Run(2, null, 6), Run(1, null, 12)], 4).Select(r => r.Id));

    [Fact]
    public void An_older_run_answered_later_does_not_displace_a_newer_one() =>
        Assert.Equal([1L, 2], Rules.Distinct([Run(2, 9, 0), Run(1, 3, 1)], 2).Select(r => r.Id));

    [Fact]
    public void No_more_come_than_are_wanted() =>
        Assert.Equal([2L], Rules.Distinct([Run(2, 3, 0), Run(1, 9, 1)], 1).Select(r => r.Id));
}
