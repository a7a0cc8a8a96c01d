using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>
/// For a night that falls through: later nights here, tonight at the subscriber's other sites, through the same evaluation.
/// </summary>
internal sealed class AlternativeFinder(WatchStore watches, SharedSky sky, Cores cores, IClock clock, Telemetry telemetry)
{
    /// <summary>How many nights ahead are worth naming: past the fifth a night is an outlook only.</summary>
    private const int NightsAhead = 5;

    private const int MostShown = 3;

    private readonly MeasuredEvaluations evaluations = new(sky, telemetry);

    /// <summary>The best few, by watch id of the orders that need them.</summary>
    public async Task<IReadOnlyDictionary<string, IReadOnlyList<Alternative>>> FindAsync(
        IReadOnlyList<LetterOrder> orders, PassForecasts forecasts, CancellationToken cancellationToken)
    {
        var found = new Dictionary<string, IReadOnlyList<Alternative>>();
        foreach (var order in orders.Where(NeedsThem))
            found[order.Plan.Watch.Id] = await InsteadOfAsync(order.Plan, forecasts, cancellationToken);
        return found;
    }

    /// <summary>The best few instead of one night.</summary>
    public async Task<IReadOnlyList<Alternative>> InsteadOfAsync(
        NightPlan plan, PassForecasts forecasts, CancellationToken cancellationToken)
    {
        var plans = new List<NightPlan>();
        foreach (var (watch, night) in await CandidatesAsync(plan, cancellationToken))
        {
            var (weather, chances) = (await forecasts.AskAsync(NightEvaluation.PlaceOf(watch)), await forecasts.BookAsync());
            plans.Add(
                await cores.ComputeAsync(() =>
                    Task.FromResult(evaluations.Of(watch, night, weather, chances, clock.GetCurrentInstant()).Plan)));
        }

        return
        [
            .. Alternatives
                .Rank(plan.Watch, plans, clock.GetCurrentInstant())
                .Take(MostShown)
                .Select(best => new Alternative(best.Plan, best.DriveKm)),
        ];
    }

    private static bool NeedsThem(LetterOrder order) =>
        order.Kind is LetterKind.RescheduleWarning or LetterKind.StandDown && order.Plan.Verdict.Class != VerdictClass.Go;

    private async Task<IEnumerable<(Watch Watch, LocalDate Night)>> CandidatesAsync(NightPlan plan, CancellationToken cancellationToken)
    {
        var others = await watches.OfSubscriberAsync(plan.Watch.Subscriber.Address, cancellationToken);
        return Enumerable
            .Range(1, NightsAhead)
            .Select(ahead => (plan.Watch, plan.Night.PlusDays(ahead)))
            .Concat(
                others
                    .Where(other => !other.IsPausedOn(plan.Night) && other.Id != plan.Watch.Id && other.Site.Id != plan.Watch.Site.Id)
                    .Select(other => (other, plan.Night)));
    }
}
