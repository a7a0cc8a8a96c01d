using NightWatch.Letters;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Store.News;
using NightWatch.Store.Passes;
using NightWatch.Watchkeeping.Calls;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>From the looks at one subscriber's watches to letters, kept together with the state in one transaction.</summary>
internal sealed class SubscriberPass(
    PassStore passes,
    NewsStore news,
    AlternativeFinder alternatives,
    LetterWriter writer,
    LetterCalls calls,
    Cores cores,
    IClock clock,
    IPassWitness witness,
    RecordReader record,
    Telemetry telemetry)
{
    /// <summary>Writes and keeps.</summary>
    /// <returns>What became of it; overtaken: nothing was kept.</returns>
    public async Task<PassOutcome> KeepAsync(IReadOnlyList<WatchPass> looks, PassForecasts forecasts, CancellationToken cancellationToken)
    {
        var now = clock.GetCurrentInstant();
        var letters = new List<(LetterDraft Draft, Letter Letter)>();
        LetterOrder[] orders = [.. looks.SelectMany(look => look.Orders)];
        var owesNews = orders.Length > 0 && await news.IsOwedAsync(orders[0].Plan.Watch.Subscriber.Address, cancellationToken);
        var tracks = await record.TracksAsync(orders, now, cancellationToken);
        foreach (var kind in orders.GroupBy(order => order.Kind))
        {
            using var render = telemetry.Begin(Stage.Render);
            var draft = new LetterDraft
            {
                Orders = [.. BestFirst(kind)],
                Alternatives = await alternatives.FindAsync([.. kind], forecasts, cancellationToken),
                Tracks = tracks,
                TellsNews = owesNews && letters.Count == 0,
                Now = now,
            };
            letters.Add((draft, await cores.ComputeAsync(() => writer.WriteAsync(draft, cancellationToken))));
        }

        using var timer = telemetry.Begin(Stage.Commit);
        var outcome = await passes.CommitAsync(
            new PassCommit
            {
                Done = [.. looks.Select(look => look.Claim)],
                Verdicts = [.. looks.SelectMany(look => look.Verdicts)],
                Told = [.. looks.SelectMany(look => look.Told)],
                Letters = [.. letters.SelectMany(written => calls.DraftsOf(written.Draft, written.Letter, now))],
                Schedule = [.. looks.SelectMany(look => look.Schedule)],
            },
            now,
            cancellationToken);
        if (outcome is PassOutcome.Committed)
        {
            foreach (var (draft, letter) in letters) witness.Wrote(draft, letter);
        }

        return outcome;
    }

    private static IEnumerable<LetterOrder> BestFirst(IEnumerable<LetterOrder> orders) => orders
        .OrderByDescending(order => order.Plan.Verdict.Class)
        .ThenByDescending(order => Math.Round(Alternatives.Promise(order.Plan), 3))
        .ThenBy(order => order.Plan.Night)
        .ThenBy(order => order.Plan.Watch.Id, StringComparer.Ordinal);
}
