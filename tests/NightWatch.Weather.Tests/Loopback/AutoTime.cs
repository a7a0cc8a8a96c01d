using System.Collections.Concurrent;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace NightWatch.Weather.Tests.Loopback;

/// <summary>
/// A clock that stands still while the network works and jumps over every wait between attempts, noting how long it would have been.
/// However slow the machine, nothing runs out of time on it.
/// </summary>
/// <param name="start">What it shows at first.</param>
/// <param name="limits">How long things may take. They are not waits; they end only when a test says so.</param>
internal sealed class AutoTime(Instant start, params TimeSpan[] limits) : FakeTimeProvider(start.ToDateTimeOffset()), IClock
{
    private readonly ConcurrentQueue<TimeSpan> waits = new();

    /// <summary>The waits between attempts so far.</summary>
    public IReadOnlyList<TimeSpan> Waits => [.. waits];

    public Instant GetCurrentInstant() => Instant.FromDateTimeOffset(GetUtcNow());

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = base.CreateTimer(callback, state, dueTime, period);
        if (dueTime > TimeSpan.Zero && !limits.Contains(dueTime))
        {
            waits.Enqueue(dueTime);
            _ = Task.Run(() => Advance(dueTime));
        }

        return timer;
    }
}
