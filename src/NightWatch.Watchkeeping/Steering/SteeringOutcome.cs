namespace NightWatch.Watchkeeping.Steering;

/// <summary>What came of a subscriber's wish. Closed.</summary>
public abstract record SteeringOutcome
{
    private SteeringOutcome()
    {
    }

    /// <summary>Kept; asking for the same again is as good as once.</summary>
    /// <param name="Says">One sentence for the subscriber.</param>
    public sealed record Done(string Says) : SteeringOutcome;

    /// <summary>It cannot be; nothing changed.</summary>
    /// <param name="Why">One sentence for the subscriber.</param>
    public sealed record Refused(string Why) : SteeringOutcome;

    /// <summary>There is no such watch; nothing changed.</summary>
    /// <param name="WatchId">The id that was given.</param>
    public sealed record NoSuchWatch(string WatchId) : SteeringOutcome;
}
