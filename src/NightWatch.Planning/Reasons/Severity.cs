namespace NightWatch.Planning.Reasons;

/// <summary>How bad. Ordered.</summary>
public enum Severity
{
    /// <summary>Within the limits.</summary>
    Ok,

    /// <summary>Makes a night marginal at best.</summary>
    Caution,

    /// <summary>Stops it.</summary>
    Stop,
}
