namespace NightWatch.Weather.Fake;

/// <summary>The weather at a place and an instant. Fractions are 0 to 1.</summary>
public readonly record struct WeatherState
{
    /// <summary>Total cloud, fraction.</summary>
    public required double Cloud { get; init; }

    /// <summary>Low cloud, fraction.</summary>
    public required double LowCloud { get; init; }

    /// <summary>Medium cloud, fraction.</summary>
    public required double MediumCloud { get; init; }

    /// <summary>High cloud, fraction.</summary>
    public required double HighCloud { get; init; }

    /// <summary>Fog, fraction of the area.</summary>
    public required double Fog { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public required double AirC { get; init; }

    /// <summary>Dew point, °C, never above the air temperature.</summary>
    public required double DewPointC { get; init; }

    /// <summary>Relative humidity, fraction.</summary>
    public required double RelativeHumidity { get; init; }

    /// <summary>Mean wind, m/s.</summary>
    public required double WindMps { get; init; }

    /// <summary>Gust, m/s.</summary>
    public required double GustMps { get; init; }

    /// <summary>Where the wind comes from, degrees.</summary>
    public required double WindFromDeg { get; init; }

    /// <summary>Rain, mm/h.</summary>
    public required double RainMmPerH { get; init; }

    /// <summary>Probability of rain in the hour, fraction; in the truth 0 or 1.</summary>
    public required double RainProbability { get; init; }

    /// <summary>Probability of thunder in the hour, fraction.</summary>
    public required double ThunderProbability { get; init; }

    /// <summary>Pressure at sea level, hPa.</summary>
    public required double PressureHpa { get; init; }

    /// <summary>Visibility, m.</summary>
    public required double VisibilityM { get; init; }
}
