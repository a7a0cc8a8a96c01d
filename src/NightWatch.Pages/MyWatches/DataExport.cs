using System.Text.Json;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.MyWatches;

/// <summary>
/// Everything that is kept of an address, as one JSON document: watches as their files are, what was judged, said and written.
/// </summary>
internal sealed class DataExport(
    WatchStore watches, VerdictStore verdicts, OutcomeStore outcomes, ToldNightStore told, SubscriberStore subscribers, IClock clock)
{
    private static readonly LocalDate Ever = new(2000, 1, 1);

    private static readonly LocalDate Never = new(2200, 1, 1);

    private static readonly JsonSerializerOptions Options = new(WatchJson.Options) { WriteIndented = true };

    public async Task<byte[]> OfAsync(string address, CancellationToken stop)
    {
        var own = await watches.OfSubscriberAsync(address, stop);
        var histories = new List<object>();
        foreach (var watch in own)
        {
            histories.Add(
                new
                {
                    watch,
                    verdicts = (await verdicts.OfWatchAsync(watch.Id, Ever, Never, stop)).Select(record =>
                        Line(record, Speech.Metric(watch.Site.Zone))),
                    outcomes = (await outcomes.OfWatchAsync(watch.Id, Ever, Never, stop)).Select(o => new
                    {
                        o.Night,
                        source = o.Source.ToString(),
                        outcome = o.Outcome.ToString(),
                        o.At,
                        o.Note,
                    }),
                    told = (await told.FromAsync(watch.Id, Ever, stop)).Select(memory => memory.Night),
                });
        }

        return JsonSerializer.SerializeToUtf8Bytes(
            new
            {
                address,
                writtenAt = clock.GetCurrentInstant(),
                watches = histories,
                letters = await subscribers.LettersAsync(address, stop),
            },
            Options);
    }

    private static object Line(VerdictRecord record, Speech speech) =>
        new
        {
            record.Night,
            pass = record.Pass.ToString(),
            record.At,
            verdict = record.Verdict.Class.ToString(),
            probability = record.Verdict.Probability.Value,
            runStart = record.Verdict.Run?.Start,
            runEnd = record.Verdict.Run?.End,
            reasons = record.Verdict.Reasons.Select(reason => new
            {
                factor = reason.Factor.ToString(),
                severity = reason.Severity.ToString(),
                text = speech.Whole(reason),
            }),
            letter = record.Letter?.ToString(),
            record.Why,
        };
}
