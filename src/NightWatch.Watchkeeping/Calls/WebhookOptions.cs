namespace NightWatch.Watchkeeping.Calls;

/// <summary>Section "Webhooks".</summary>
public sealed class WebhookOptions
{
    public const string Section = "Webhooks";

    /// <summary>Calls are made for the watches that name an address; false: none is.</summary>
    public bool Enabled { get; set; } = true;

    /// <summary>Lets watches name http and https addresses on this very machine too; for receivers that run beside the service.</summary>
    public bool AllowLoopback { get; set; }

    /// <summary>Seconds that a receiver has to answer.</summary>
    public int TimeoutSeconds { get; set; } = 10;

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IEnumerable<string> Faults()
    {
        if (TimeoutSeconds is < 1 or > 60) yield return $"Webhooks:TimeoutSeconds is {TimeoutSeconds}; accepted: 1 to 60.";
    }
}
