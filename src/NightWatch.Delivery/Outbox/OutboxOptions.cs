namespace NightWatch.Delivery.Outbox;

/// <summary>Section "Outbox".</summary>
public sealed class OutboxOptions
{
    public const string Section = "Outbox";

    /// <summary>Letters that a process takes at once.</summary>
    public int Batch { get; set; } = 20;

    /// <summary>Seconds after which another process takes over what a dead one had in hand; renewed while it lives.</summary>
    public int LeaseSeconds { get; set; } = 90;

    /// <summary>Seconds that a letter in hand gets to finish when the service is told to stop.</summary>
    public int DrainSeconds { get; set; } = 20;

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IReadOnlyList<string> Faults() => [.. Check()];

    private IEnumerable<string> Check()
    {
        if (Batch is < 1 or > 1000) yield return $"Outbox:Batch is {Batch}; accepted: 1 to 1000.";
        if (LeaseSeconds is < 15 or > 3600) yield return $"Outbox:LeaseSeconds is {LeaseSeconds}; accepted: 15 to 3600.";
        if (DrainSeconds is < 0 or > 300) yield return $"Outbox:DrainSeconds is {DrainSeconds}; accepted: 0 to 300.";
    }
}
