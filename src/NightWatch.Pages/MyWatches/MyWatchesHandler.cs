using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Pages.Address;
using NightWatch.Pages.Watches;
using NightWatch.Planning.Watches;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NightWatch.Words;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.MyWatches;

/// <summary>What a subscriber sees of their watches.</summary>
internal sealed class MyWatchesHandler(
    WatchStore watches, VerdictStore verdicts, ToldNightStore told, StoredLinkSigner signer, PageRoot root, IClock clock)
{
    /// <summary>The list, with the coming nights as they were last judged.</summary>
    public async Task<MyWatchesModel> ListAsync(string address, string? note, CancellationToken stop)
    {
        var items = new List<WatchItem>();
        foreach (
            var watch in (await watches.OfSubscriberAsync(address, stop)).OrderBy(
                watch => watch.Site.Name, StringComparer.OrdinalIgnoreCase))
            items.Add(await ItemAsync(watch, stop));
        return new MyWatchesModel(address, note, items);
    }

    /// <summary>One watch of this subscriber; null: none of that id is theirs.</summary>
    public async Task<Watch?> OwnAsync(string address, string id, CancellationToken stop) =>
        await watches.FindAsync(id, stop) is { } watch && watch.Subscriber.Key() == Subscriber.KeyOf(address) ? watch : null;

    private async Task<WatchItem> ItemAsync(Watch watch, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var today = now.InZone(watch.Site.Zone).Date;
        // A night is named by its evening, so until noon last night is still going on.
        var from = now.InZone(watch.Site.Zone).Hour < 12 ? today.PlusDays(-1) : today;
        var memories = (await told.FromAsync(watch.Id, from, stop)).ToDictionary(memory => memory.Night.Night);
        // Paths, not whole addresses: the reader is here already.
        var links = new LetterLinks(new Uri("http://here" + root.To("")), signer);
        var speech = Speech.To(watch);
        var words = speech.Language;
        return new WatchItem(
            watch.Id,
            watch.Site.Name,
            words.PlaceAndSubject(WatchFields.Coordinates(watch.Site.Position), watch.Subject),
            words.WatchState(watch.IsPausedAt(now), watch.Paused ? null : watch.PausedUntil, speech),
            !watch.IsPausedAt(now),
            LocalDatePattern.Iso.Format(today.PlusDays(1)),
            links.Season(watch)!.PathAndQuery,
            links.Record(watch)!.PathAndQuery,
            [
                .. (await verdicts.LatestAsync(watch.Id, from, stop)).Select(record => NightOf(
                    record, watch, links, memories.TryGetValue(record.Night, out var memory) && memory.Night.Snoozed)),
            ]);
    }

    private static ComingNight NightOf(VerdictRecord record, Watch watch, LetterLinks links, bool isSnoozed)
    {
        var speech = Speech.To(watch);
        var verdict = record.Verdict;
        var says = speech.Language.InShort(verdict, speech);
        return new ComingNight(
            speech.Clock.Day(record.Night),
            speech.Of(verdict.Class),
            VerdictStyle.Of(verdict.Class),
            isSnoozed ? speech.Language.WithoutLetters(says) : says,
            links.Night(watch, record.Night)!.PathAndQuery,
            links.Snooze(watch, record.Night)!.PathAndQuery,
            isSnoozed);
    }
}
