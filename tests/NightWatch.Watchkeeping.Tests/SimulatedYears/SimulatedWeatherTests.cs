using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.SimulatedYears;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.SimulatedYears;

public sealed class SimulatedWeatherTests
{
    private const int Seed = 3;
    private static readonly Watch watch = SimulatedSites.Of(Seed, 1)[0];
    private readonly FakeWeather world = new(Seed);

    /// <summary>The short way must say what the service says: its own feed, its own evaluation.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0)]
    [InlineData(3, 0)]
    [InlineData(1, 20)]
    public async Task A_night_is_planned_as_the_service_plans_it(int lead, int ensemble)
    {
        var stop = TestContext.Current.CancellationToken;
        var simulated = new SimulatedWeather(world, watch, new SharedSky(), ensemble);
        var compared = 0;
        foreach (var (night, dark) in DarkNights(simulated).Take(2))
        {
            var at = watch.Site.Zone.AtStartOfDay(night.PlusDays(-lead)).ToInstant() + Duration.FromHours(lead == 0 ? 14 : 19);
            var runs = new List<ForecastSeries>();
            for (var back = 0; back <= ForecastSource.EarlierRuns; back++)
                runs.Add(
                    (
                        (Fetched.Fresh)
                            await FeedAt(at - back * FakeForecastRun.Every).FetchAsync(NightEvaluation.PlaceOf(watch), null, stop)).Series);
            var members = (FetchedMembers.Fresh)await FeedAt(at).FetchMembersAsync(NightEvaluation.PlaceOf(watch), null, stop);
            var came = new PlaceWeather
            {
                Newest = runs[0],
                EarlierRuns = [.. runs.Skip(1)],
                Members = ensemble > 0 ? members.Members : [],
            };
            var service = NightEvaluation.Of(watch, night, came, ChanceBook.Unlearnt, at, new SharedSky()).Plan;
            AssertSame(service.Verdict, simulated.PlanAt(at, night, dark, told: null).Verdict);
            compared++;
        }

        Assert.Equal(2, compared);
    }

    private FakeFeed FeedAt(Instant at) => new(world, new FakeClock(at));

    [Fact]
    public async Task What_came_is_what_the_rehearsal_takes_for_the_truth()
    {
        var simulated = new SimulatedWeather(world, watch, new SharedSky());
        foreach (var (night, _) in DarkNights(simulated).Take(8))
            AssertSame(
                (await new Truth(world, new SharedSky()).OfAsync(watch, night, TestContext.Current.CancellationToken)).Verdict,
                simulated.TruthOf(night).Verdict);
    }

    private static void AssertSame(Verdict service, Verdict simulated)
    {
        Assert.Equal(service.Class, simulated.Class);
        Assert.Equal(service.Run, simulated.Run);
        Assert.Equal(service.Probability, simulated.Probability);
        Assert.Equal(
            service.Reasons.Select(reason => (reason.Factor, reason.Severity, reason.Value)),
            simulated.Reasons.Select(reason => (reason.Factor, reason.Severity, reason.Value)));
    }

    private static IEnumerable<(LocalDate Night, Interval Dark)> DarkNights(SimulatedWeather simulated) =>
        from night in Enumerable.Range(0, 300).Select(day => YearsSimulation.FirstNight.PlusDays(5 * day))
        let sky = simulated.SkyOf(night)
        where sky.Verdict.Probability.Basis != ProbabilityBasis.SkyAlone
        select (night, YearsSimulation.DarkOf(sky.Sky));
}
