using NightWatch.Planning.Chance;
using NightWatch.Store.Chances;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>The chances in use, read again now and then: another node may have learnt.</summary>
internal sealed class ChancesInUse(LearntChanceStore store)
{
    private static readonly Duration ReadEvery = Duration.FromMinutes(10);

    private Kept? kept;

    /// <summary>The book as it stands.</summary>
    public async Task<ChanceBook> BookAsync(Instant now, CancellationToken cancellationToken)
    {
        if (Volatile.Read(ref kept) is { } known && !NowAndThen.IsTime(known.At, ReadEvery, now)) return known.Book;
        // Two threads may read it at once; both read the same.
        var book = new ChanceBook(ChancePrior.Shipped, await store.NewestAsync(ChancePrior.Shipped, cancellationToken));
        Volatile.Write(ref kept, new Kept(book, now));
        return book;
    }

    private sealed record Kept(ChanceBook Book, Instant At);
}
