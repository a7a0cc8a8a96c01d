namespace NightWatch.Planning.Hazards;

/// <summary>What a person meets from leaving home to coming back. Null is unknown.</summary>
public sealed record NightExposure
{
    /// <summary>Greatest probability of thunder, fraction.</summary>
    public double? ThunderProbability { get; init; }

    /// <summary>Thunder probability from which the night is off.</summary>
    public double ThunderStop { get; init; } = 0.25;

    /// <summary>Thunder probability from which it is a caution.</summary>
    public double ThunderCare { get; init; } = 0.10;

    /// <summary>Heaviest rain at the site or upstream, mm/h.</summary>
    public double? HeaviestRainMmPerH { get; init; }

    /// <summary>Lowest wind chill, °C.</summary>
    public double? LeastWindChillC { get; init; }

    /// <summary>Shortest time to frostbite, minutes; null: not that cold, or unknown.</summary>
    public double? FrostbiteMinutes { get; init; }

    /// <summary>Lowest air temperature, °C.</summary>
    public double? LeastAirC { get; init; }

    /// <summary>Highest heat index, °C.</summary>
    public double? MostHeatIndexC { get; init; }

    /// <summary>Strongest gust, m/s.</summary>
    public double? MostGustMps { get; init; }

    /// <summary>Ice on the way there or back.</summary>
    public RoadIceRisk? RoadIce { get; init; }

    /// <summary>Least visibility during the drives, metres.</summary>
    public double? LeastDriveVisibilityM { get; init; }

    /// <summary>Hours awake when the drive home ends.</summary>
    public double? HoursAwake { get; init; }
}
