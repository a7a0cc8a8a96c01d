namespace NightWatch.Weather.Series;

/// <summary>A quantity known at an instant. Names follow the CF standard-name table where it has one.</summary>
public enum InstantQuantity
{
    /// <summary>Total cloud, fraction 0 to 1.</summary>
    CloudAreaFraction,

    /// <summary>Low cloud, fraction; the layer's bounds differ by feed.</summary>
    LowCloudAreaFraction,

    /// <summary>Medium cloud, fraction.</summary>
    MediumCloudAreaFraction,

    /// <summary>High cloud, fraction.</summary>
    HighCloudAreaFraction,

    /// <summary>Share of the area with visibility below 1000 m, fraction.</summary>
    FogAreaFraction,

    /// <summary>At 2 m, degrees Celsius.</summary>
    AirTemperatureC,

    /// <summary>At 2 m, degrees Celsius.</summary>
    DewPointC,

    /// <summary>At 2 m, fraction 0 to 1.</summary>
    RelativeHumidity,

    /// <summary>At 10 m, metres per second.</summary>
    WindMps,

    /// <summary>Where the wind comes from, degrees from north through east.</summary>
    WindFromDeg,

    /// <summary>Horizontal visibility, metres.</summary>
    VisibilityM,

    /// <summary>Convective available potential energy, J/kg.</summary>
    CapeJPerKg,

    /// <summary>Water content of the top soil layer the feed has, m³/m³.</summary>
    SoilMoistureTop,

    /// <summary>Air pressure at sea level, hectopascals.</summary>
    SeaLevelPressureHpa,
}

/// <summary>A quantity that belongs to a half-open period <c>[start, end)</c>.</summary>
public enum PeriodQuantity
{
    /// <summary>Sum over the period, mm.</summary>
    PrecipitationMm,

    /// <summary>Probability of precipitation in the period, fraction.</summary>
    PrecipitationProbability,

    /// <summary>Greatest gust in the period, metres per second.</summary>
    GustMps,

    /// <summary>Probability of thunder in the period, fraction.</summary>
    ThunderProbability,
}

/// <summary>How a value came about.</summary>
public enum Quality
{
    /// <summary>The feed does not have it; the value is null.</summary>
    Missing,

    /// <summary>Computed from other quantities of the same feed (dew point from humidity, fog from visibility).</summary>
    Derived,

    /// <summary>Between two instants, or a share of a longer period.</summary>
    Interpolated,

    /// <summary>As the feed gave it.</summary>
    Direct,
}
