using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>How the service's ticks went, for those who tell it.</summary>
internal interface ITicks
{
    /// <summary>When a tick of passes last came to its end; null: none yet.</summary>
    Instant? LastTick { get; }

    /// <summary>What a tick failed of whose next one has not gone well yet; null: all is well.</summary>
    string? Trouble { get; }
}
