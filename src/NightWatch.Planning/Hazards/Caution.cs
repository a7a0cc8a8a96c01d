using NightWatch.Planning.Sources;

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

/// <summary>One caution: its figures, and no words. Closed: these cases are all there are.</summary>
public abstract record Caution
{
    private Caution(HazardKind kind, HazardLevel level) => (Kind, Level) = (kind, level);

    /// <summary>What can hurt.</summary>
    public HazardKind Kind { get; }

    /// <summary>How much it weighs.</summary>
    public HazardLevel Level { get; }

    /// <summary>Whose rule or table it follows.</summary>
    public Formula Formula => Kind switch
    {
        HazardKind.Thunder => Formula.ThunderAndRule,
        HazardKind.Flood => Formula.FloodDepths,
        HazardKind.Cold => Formula.WindChill,
        HazardKind.Heat => Formula.HeatIndex,
        HazardKind.Wind => Formula.Beaufort,
        HazardKind.RoadIce => Formula.RoadIce,
        HazardKind.RoadFog => Formula.RoadFog,
        HazardKind.Fatigue => Formula.HoursAwake,
        HazardKind.Battery => Formula.ColdCells,
        _ => Formula.CarbonMonoxide,
    };

    /// <summary>The forecast says nothing about thunder.</summary>
    public sealed record ThunderNotTold() : Caution(HazardKind.Thunder, HazardLevel.Note);

    /// <summary>Greatest probability of thunder, fraction.</summary>
    public sealed record Thunder(HazardLevel Level, double Probability) : Caution(HazardKind.Thunder, Level);

    /// <summary>Heaviest rain in an hour, mm.</summary>
    public sealed record Flood(HazardLevel Level, double Mm) : Caution(HazardKind.Flood, Level);

    /// <summary>Lowest wind chill, °C, and after how many minutes bare skin may freeze; null: it may not.</summary>
    public sealed record Cold(HazardLevel Level, double ChillC, double? SkinFreezesMin) : Caution(HazardKind.Cold, Level);

    /// <summary>Highest heat index, °C, and its class.</summary>
    public sealed record Heat(HazardLevel Level, double IndexC, HeatDanger Danger) : Caution(HazardKind.Heat, Level);

    /// <summary>Strongest gust, m/s.</summary>
    public sealed record Gusts(HazardLevel Level, double GustMps) : Caution(HazardKind.Wind, Level);

    /// <summary>Ice on the road.</summary>
    public sealed record IcyRoad(bool IsLikely) : Caution(HazardKind.RoadIce, HazardLevel.Care);

    /// <summary>Least visibility on the drive, metres.</summary>
    public sealed record FoggyRoad(double VisibilityM, bool IsDense) : Caution(HazardKind.RoadFog, HazardLevel.Care);

    /// <summary>Hours awake by the end of the drive home.</summary>
    public sealed record LongAwake(double Hours) : Caution(HazardKind.Fatigue, HazardLevel.Care);

    /// <summary>Colder than lithium-ion cells may be charged (a note) or relied on, °C.</summary>
    public sealed record ColdCells(HazardLevel Level, double LeastC) : Caution(HazardKind.Battery, Level);

    /// <summary>Engines, stoves and heaters in a closed car or tent.</summary>
    public sealed record CarbonMonoxide() : Caution(HazardKind.CarbonMonoxide, HazardLevel.Note);
}

/// <summary>Classes of the heat index.</summary>
public enum HeatDanger
{
    /// <summary>Heat exhaustion is possible.</summary>
    Exhaustion,

    /// <summary>Heat stroke is possible.</summary>
    Stroke,

    /// <summary>Heat stroke is likely.</summary>
    Extreme,
}
