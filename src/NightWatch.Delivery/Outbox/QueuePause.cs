using NodaTime;

namespace NightWatch.Delivery.Outbox;

/// <summary>
/// Holds the whole queue back while the mail server is away or refuses us. Each process has its own: no state to disagree about.
/// </summary>
internal sealed class QueuePause
{
    private static readonly Duration[] Steps =
    [
        Duration.FromSeconds(5),
        Duration.FromSeconds(15),
        Duration.FromMinutes(1),
        Duration.FromMinutes(2),
        Duration.FromMinutes(5),
        Duration.FromMinutes(10),
        Duration.FromMinutes(15),
    ];

    // A wrong password tried every few seconds gets an account locked.
    private static readonly Duration AfterConfiguration = Duration.FromMinutes(15);

    private int failures;

    /// <summary>Nothing is sent before.</summary>
    public Instant Until { get; private set; } = Instant.MinValue;

    /// <summary>The server took a letter, or answered about one.</summary>
    public void Clear() => (failures, Until) = (0, Instant.MinValue);

    /// <summary>The server is away: longer each time in a row.</summary>
    public Instant Away(Instant now) => Until = now + Steps[Math.Min(failures++, Steps.Length - 1)];

    /// <summary>An operator must act.</summary>
    public Instant Misconfigured(Instant now) => Until = now + AfterConfiguration;
}
