using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>How the service's ticks went, for those who tell it.</summary>
internal interface ITicks
{
    /// <summary>When a tick of passes last came to its end; null: none yet.</summary>
    Instant? LastTick { get; }

    /// <summary>Why the last tick failed; null: it did not, or a later one went well.</summary>
    string? Trouble { get; }
}
