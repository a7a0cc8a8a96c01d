namespace NightWatch.Planning.Hazards;

/// <summary>What can hurt.</summary>
public enum HazardKind
{
    /// <summary>Lightning.</summary>
    Thunder,

    /// <summary>Flash flood.</summary>
    Flood,

    /// <summary>Wind chill and frostbite.</summary>
    Cold,

    /// <summary>Heat.</summary>
    Heat,

    /// <summary>Gales.</summary>
    Wind,

    /// <summary>Ice on the road.</summary>
    RoadIce,

    /// <summary>Fog on the drive.</summary>
    RoadFog,

    /// <summary>Driving after too many hours awake.</summary>
    Fatigue,

    /// <summary>Lithium batteries in the cold.</summary>
    Battery,

    /// <summary>Carbon monoxide.</summary>
    CarbonMonoxide,
}

/// <summary>How much it weighs. Ordered.</summary>
public enum HazardLevel
{
    /// <summary>Worth knowing; changes no verdict.</summary>
    Note,

    /// <summary>Take care.</summary>
    Care,

    /// <summary>Do not go.</summary>
    Stop,
}

/// <summary>One caution.</summary>
/// <param name="Kind">What can hurt.</param>
/// <param name="Level">How much it weighs.</param>
/// <param name="Text">One to three sentences, without the closing sentence.</param>
public sealed record Caution(HazardKind Kind, HazardLevel Level, string Text)
{
    /// <summary>The sentence that closes every list of cautions.</summary>
    public const string Deference =
        "Official warnings always come first: follow your local weather service, park and emergency authorities. This is guidance, not a warning service.";

    /// <summary>The caution on its own, closed by <see cref="Deference"/>.</summary>
    public string Closed => Text + " " + Deference;
}
