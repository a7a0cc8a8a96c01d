using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Road;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

public sealed class AlternativeFinderTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-alternatives-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_best_three_come_in_the_order_of_the_ranking_with_their_drive_from_home()
    {
        var stop = TestContext.Current.CancellationToken;
        var shown = 0;
        var elsewhere = 0;
        for (var day = 0; day < 8; day++)
        {
            await using var parts = await PartsAsync(Cast.FirstDay.PlusDays(day));
            var forecasts = parts.GetRequiredService<ForecastSource>().BeginPass(stop);
            var order = await OrderAsync(parts, forecasts, Cast.FirstDay.PlusDays(day));

            var found = (await parts.GetRequiredService<AlternativeFinder>().FindAsync([order], forecasts, stop))[order.Plan.Watch.Id];

            var ranked = Alternatives
                .Rank(
                    order.Plan.Watch,
                    await CandidatesAsync(parts, forecasts, order.Plan),
                    parts.GetRequiredService<IClock>().GetCurrentInstant())
                .Take(3);
            Assert.Equal(
                ranked.Select(best => (best.Plan.Watch.Id, best.Plan.Night, best.DriveKm)),
                found.Select(best => (best.Plan.Watch.Id, best.Plan.Night, best.DriveKm)));
            Assert.All(found, best => Assert.NotEqual(VerdictClass.NoGo, best.Plan.Verdict.Class));
            foreach (var other in found.Where(best => best.Plan.Watch.Id != order.Plan.Watch.Id))
            {
                Assert.Equal(order.Plan.Night, other.Plan.Night);
                Assert.Equal(RoadDistance.RoadKm(HomeOf(order.Plan.Watch), other.Plan.Watch.Site.Position), other.DriveKm);
                elsewhere++;
            }

            shown += found.Count;
        }

        Assert.True(shown > 0 && elsewhere > 0, $"{shown} shown, {elsewhere} of them elsewhere");
    }

    [Fact]
    public async Task A_night_that_is_on_needs_none()
    {
        var stop = TestContext.Current.CancellationToken;
        await using var parts = await PartsAsync(Cast.FirstDay);
        var forecasts = parts.GetRequiredService<ForecastSource>().BeginPass(stop);
        var order = await OrderAsync(parts, forecasts, Cast.FirstDay);

        Assert.Empty(
            await parts
                .GetRequiredService<AlternativeFinder>()
                .FindAsync([order with { Kind = LetterKind.MorningTimeline }], forecasts, stop));
    }

    // Five more nights here, and tonight at the other places.
    private static async Task<List<NightPlan>> CandidatesAsync(ServiceProvider parts, PassForecasts forecasts, NightPlan off)
    {
        var now = parts.GetRequiredService<IClock>().GetCurrentInstant();
        var candidates = Enumerable.Range(1, 5).Select(ahead => (off.Watch, Night: off.Night.PlusDays(ahead)))
            .Concat(Cast.Watches.Where(watch => watch.Id != off.Watch.Id).Select(watch => (Watch: watch, off.Night)));
        var plans = new List<NightPlan>();
        foreach (var (watch, night) in candidates)
            plans.Add(
                (await NightEvaluation.AskAsync(watch, night, forecasts, now, parts.GetRequiredService<SharedSky>(), lastTold: null)).Plan);
        return plans;
    }

    private static GeoPosition HomeOf(Watch watch) => new(watch.Outing.HomeLatitudeDeg!.Value, watch.Outing.HomeLongitudeDeg!.Value);

    private static async Task<LetterOrder> OrderAsync(ServiceProvider parts, PassForecasts forecasts, LocalDate night)
    {
        var now = parts.GetRequiredService<IClock>().GetCurrentInstant();
        var watch = Cast.Watches[0];
        var plan = (
            await NightEvaluation.AskAsync(watch, night, forecasts, now, parts.GetRequiredService<SharedSky>(), lastTold: null)).Plan;
        plan = plan with { Verdict = plan.Verdict with { Class = VerdictClass.NoGo } };
        return new LetterOrder(
            LetterKind.RescheduleWarning,
            plan,
            new ToldNight
            {
                WatchId = watch.Id,
                Night = night,
                Told = VerdictClass.Go,
            },
            now + Duration.FromHours(1),
            "it fell through");
    }

    private Task<ServiceProvider> PartsAsync(LocalDate today) => RehearsalParts.StartAsync(
        Directory.CreateDirectory(Path.Combine(folder, $"{today:R}")).FullName,
        new VirtualClock(today.At(new LocalTime(11, 0)).InZoneStrictly(Cast.Watches[0].Site.Zone).ToInstant()));
}
