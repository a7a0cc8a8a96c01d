using System.Text.Json.Serialization;

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

    /// <summary>Whose rule or table it follows.</summary>
    public string Source => Kind switch
    {
        HazardKind.Thunder => "30-30 rule, US National Weather Service",
        HazardKind.Flood => "Turn Around Don't Drown, US National Weather Service; heavy rain by the AMS Glossary, 20 mm/h an engineering choice",
        HazardKind.Cold => "Wind chill index 2001 and frostbite times, Environment Canada",
        HazardKind.Heat => "Heat index, Rothfusz 1990, US National Weather Service SR 90-23",
        HazardKind.Wind => "Beaufort 7 and 8, WMO-No. 306",
        HazardKind.RoadIce => "Road 3 K below the air under a clear sky (engineering choice): no road is surveyed here",
        HazardKind.RoadFog => "Fog below 1000 m (WMO); dense below 200 m, common practice of road weather services",
        HazardKind.Fatigue => "Williamson and Feyer 2000, Occupational and Environmental Medicine 57, 649",
        HazardKind.Battery => "Usual cell specifications; Jaguemont et al. 2016, Applied Energy 164, 99",
        _ => "WHO guidelines on carbon monoxide",
    };

    /// <summary>The caution on its own, closed by <see cref="Deference"/>.</summary>
    [JsonIgnore]
    public string Closed => Text + " " + Deference;
}
