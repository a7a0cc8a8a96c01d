namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>What a night was really like.</summary>
public enum NightOutcome
{
    /// <summary>Clear: the photographer got what they came for, or would have.</summary>
    Clear,

    /// <summary>Part of the night was usable.</summary>
    Partly,

    /// <summary>Cloud, fog or rain: nothing usable.</summary>
    Cloudy,

    /// <summary>The sky was clear, the lens was not: dew or frost.</summary>
    WetLens,

    /// <summary>The photographer could not go, and so cannot say.</summary>
    Stayed,

    /// <summary>The source saw the night, and not enough of it: by what it could not see the night was usable or it was not.</summary>
    NotTold,
}
