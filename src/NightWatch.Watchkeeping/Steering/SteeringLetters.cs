using NightWatch.Letters;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Watchkeeping.Calls;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Watchkeeping.Steering;

/// <summary>The letters that a wish calls for, ready for the outbox. Each night has its own: each carries its own calendar entry.</summary>
internal sealed class SteeringLetters(LetterWriter writer, LetterCalls calls, RecordReader record, NewsStore news)
{
    public async Task<IReadOnlyList<OutboxDraft>> WriteAsync(IReadOnlyList<LetterOrder> orders, Instant now, CancellationToken stop)
    {
        var drafts = new List<OutboxDraft>();
        var tracks = await record.TracksAsync(orders, now, stop);
        var owesNews = orders.Count > 0 && await news.IsOwedAsync(orders[0].Plan.Watch.Subscriber.Address, stop);
        foreach (var order in orders)
        {
            var draft = new LetterDraft { Orders = [order], Tracks = tracks, TellsNews = owesNews && drafts.Count == 0, Now = now };
            drafts.AddRange(calls.DraftsOf(draft, await writer.WriteAsync(draft, stop), now));
        }

        return drafts;
    }
}
