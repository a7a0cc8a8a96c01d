using NodaTime;

namespace NightWatch.Watchkeeping.Timing;

/// <summary>The rule for everything that is done now and then.</summary>
internal static class NowAndThen
{
    /// <summary>It is time again. A clock that was put back counts as time passed: nothing may wait for it to catch up.</summary>
    /// <param name="last">When it was done last; null: never.</param>
    /// <param name="every">How long it holds.</param>
    /// <param name="now">The clock reading.</param>
    public static bool IsTime(Instant? last, Duration every, Instant now) => last is null || now - last >= every || now < last;
}
