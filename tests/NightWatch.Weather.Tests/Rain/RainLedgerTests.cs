using CsCheck;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.Recordings;
using NightWatch.Weather.Tests.Series;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Weather.Tests.Rain;

public sealed class RainLedgerTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 3, 2, 12, 0);
    private static readonly Duration Hour = Duration.FromHours(1);

    private static IEnumerable<RainEntry> Hours(int from, int to, double mm, int saidHoursAgo = 0) =>
        Enumerable.Range(from, to - from).Select(h => new RainEntry(Now + h * Hour, mm, Now - saidHoursAgo * Hour));

    [Fact]
    public void Seventy_two_known_hours_add_up() => Assert.Equal(7.2, RainLedger.Total(Hours(-72, 0, 0.1), Now).Mm!.Value, 9);

    [Fact]
    public void One_unknown_hour_makes_it_unknown() =>
        Assert.Equal(new RainBefore(null, 71, 72), RainLedger.Total(Hours(-72, -10, 0.1).Concat(Hours(-9, 0, 0.1)), Now));

    [Fact]
    public void Before_there_is_enough_it_is_unknown_and_not_dry() =>
        Assert.Equal(new RainBefore(null, 71, 72), RainLedger.Total(Hours(-71, 0, 0), Now));

    [Fact]
    public void What_was_said_last_counts() =>
        Assert.Equal(
            72 * 0.5,
            RainLedger
                .Total(Hours(-72, 0, 3, saidHoursAgo: 8).Concat(Hours(-72, 0, 0.5)).Concat(Hours(-72, 0, 9, saidHoursAgo: 20)), Now)
                .Mm!.Value,
            9);

    [Fact]
    public void The_running_hour_counts_by_its_share() =>
        Assert.Equal(
            1.5,
            RainLedger.Total(Hours(-5, 1, 0).Append(new RainEntry(Now, 6, Now + Hour)), Now + Duration.FromMinutes(15), 4).Mm!.Value,
            9);

    [Fact]
    public void A_forecast_adds_the_hours_shortly_ahead_and_not_those_far_ahead()
    {
        // met-norway-complete-51.5,-0.1.json: hourly from 20 July 11:00, no past.
        var retrieved = Instant.FromUtc(2020, 7, 20, 11, 5);
        var entries = RainLedger.Entries(new MetNorwayReader().Read(Recording.Bytes(Recording.MetNorway), retrieved));

        Assert.Equal(Instant.FromUtc(2020, 7, 20, 11, 0), entries[0].Hour);
        Assert.Equal(Instant.FromUtc(2020, 7, 20, 23, 0), entries[^1].Hour);
        Assert.Equal(13, entries.Count);
    }

    [Fact]
    public void Six_hourly_amounts_are_shared_out_evenly()
    {
        var series = ForecastSeriesReadingsTests.Build(b => b.Add(PeriodQuantity.PrecipitationMm, Now - 12 * Hour, Now - 6 * Hour, 6));

        Assert.Equal([1.0, 1, 1, 1, 1, 1], RainLedger.Entries(series).Select(e => e.Mm));
    }

    [Fact]
    public async Task A_feed_with_past_hours_needs_no_ledger()
    {
        var weather = new FakeWeather(3);
        var place = new ForecastPlace(55, -4, 200);
        var at = Instant.FromUtc(2031, 3, 2, 13, 0);
        var fresh = Assert.IsType<Fetched.Fresh>(
            await new FakeFeed(weather, new FakeClock(at)).FetchAsync(place, null, TestContext.Current.CancellationToken));

        var fell = RainLedger.Antecedent(fresh.Series, [], Instant.FromUtc(2031, 3, 2, 12, 0));

        var truth = Enumerable
            .Range(0, 72)
            .Sum(h => weather.At(place, Instant.FromUtc(2031, 3, 2, 12, 0) - h * Hour - Duration.FromMinutes(30)).RainMmPerH);
        Assert.Equal(truth, fell.Mm!.Value, 1);
    }

    [Fact]
    public void A_feed_without_past_is_completed_by_what_was_said_before()
    {
        var retrieved = Instant.FromUtc(2020, 7, 20, 11, 5);
        var series = new MetNorwayReader().Read(Recording.Bytes(Recording.MetNorway), retrieved);
        var before = Enumerable
            .Range(1, 72)
            .Select(h => new RainEntry(Instant.FromUtc(2020, 7, 20, 11, 0) - h * Hour, 0.25, retrieved - h * Hour))
            .ToList();

        Assert.Equal(RainBefore.Unknown, RainLedger.Antecedent(series, [], retrieved));
        Assert.Equal(new RainBefore(null, 71, 72), RainLedger.Antecedent(null, before, retrieved));
        // 71 whole hours and 55 minutes of the first one, all at 0.25 mm, and a dry running hour.
        Assert.Equal(0.25 * (71 + 55.0 / 60), RainLedger.Antecedent(series, before, retrieved).Mm!.Value, 9);
    }

    [Fact]
    public void More_entries_never_make_a_known_total_unknown() =>
        Gen.Select(Gen.Int[-100, 10], Gen.Double[0, 5])
            .Array[0, 30]
            .Sample(extra =>
                RainLedger
                    .Total(
                        Hours(-72, 0, 0.1, saidHoursAgo: 5).Concat(extra.Select(e => new RainEntry(Now + e.Item1 * Hour, e.Item2, Now))),
                        Now)
                    .Mm
                    is >= 0);
}
