using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>A clock that stands until it is put forward; the service's one source of time in a rehearsal.</summary>
internal sealed class VirtualClock(Instant start) : TimeProvider, IClock
{
    private Instant now = start;

    public Instant GetCurrentInstant() => now;

    public override DateTimeOffset GetUtcNow() => now.ToDateTimeOffset();

    /// <summary>Puts the clock forward; never back.</summary>
    public void AdvanceTo(Instant instant) => now = Instant.Max(now, instant);
}
