using NightWatch.Planning.Verification.Calibrating;
using NightWatch.Store.Calibrations;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>The calibrations in use, read again now and then: another node may have learnt.</summary>
internal sealed class CalibrationDesk(CalibrationStore store)
{
    private static readonly Duration ReadEvery = Duration.FromMinutes(10);

    private Kept? kept;

    /// <summary>The book as it stands.</summary>
    public async Task<CalibrationBook> BookAsync(Instant now, CancellationToken cancellationToken)
    {
        if (Volatile.Read(ref kept) is { } known && !NowAndThen.IsTime(known.At, ReadEvery, now)) return known.Book;
        // Two threads may read it at once; either is right.
        var book = await store.NewestAsync(cancellationToken);
        Volatile.Write(ref kept, new Kept(book, now));
        return book;
    }

    private sealed record Kept(CalibrationBook Book, Instant At);
}
