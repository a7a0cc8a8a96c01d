namespace NightWatch.Planning.Reasons;

/// <summary>What a reason is about. The order is the order of presentation within one severity.</summary>
public enum Factor
{
    /// <summary>Thunder.</summary>
    Thunder,

    /// <summary>Any other hazard to people: cold, heat, flood, ice on the road, fatigue.</summary>
    Hazard,

    /// <summary>Length of the usable run.</summary>
    Length,

    /// <summary>Total cloud.</summary>
    Cloud,

    /// <summary>Amount of precipitation.</summary>
    Rain,

    /// <summary>Probability of precipitation.</summary>
    RainProbability,

    /// <summary>Gusts.</summary>
    Wind,

    /// <summary>Fog or visibility.</summary>
    Fog,

    /// <summary>The Moon's brightening of the sky at the subject.</summary>
    Moon,

    /// <summary>Darkness of the site and the glow of its towns.</summary>
    Glow,

    /// <summary>Twilight in the run.</summary>
    Twilight,

    /// <summary>Dew or frost on the lens.</summary>
    Dew,

    /// <summary>Wet ground.</summary>
    Ground,

    /// <summary>Subject out of the frame.</summary>
    Frame,

    /// <summary>Sky level in the frame.</summary>
    SkyLevel,

    /// <summary>Battery energy.</summary>
    Power,

    /// <summary>Card space.</summary>
    Storage,

    /// <summary>Two feeds do not agree.</summary>
    Disagreement,

    /// <summary>Age or coarseness of the forecast.</summary>
    Forecast,

    /// <summary>The chance that the night is usable, against what it is worth to the reader.</summary>
    Chance,
}
