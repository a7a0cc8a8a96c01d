using System.Collections.Concurrent;
using Microsoft.Extensions.Time.Testing;
using NightWatch.Weather.Http;
using NodaTime;

namespace NightWatch.Weather.Tests.Http;

/// <summary>
/// A clock that stands still while the network works and jumps over every wait between attempts, noting how long it would have been.
/// </summary>
internal sealed class AutoTime(Instant start) : FakeTimeProvider(start.ToDateTimeOffset()), IClock
{
    private readonly ConcurrentQueue<TimeSpan> waits = new();

    /// <summary>The waits between attempts so far.</summary>
    public IReadOnlyList<TimeSpan> Waits => [.. waits];

    public Instant GetCurrentInstant() => Instant.FromDateTimeOffset(GetUtcNow());

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = base.CreateTimer(callback, state, dueTime, period);
        // The pipeline's own limits are not waits; they end only when a test says so.
        if (dueTime > TimeSpan.Zero && dueTime != FeedPipeline.AttemptTime && dueTime != FeedPipeline.TotalTime)
        {
            waits.Enqueue(dueTime);
            _ = Task.Run(() => Advance(dueTime));
        }

        return timer;
    }
}
