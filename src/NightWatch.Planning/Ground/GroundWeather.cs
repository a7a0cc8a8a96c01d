namespace NightWatch.Planning.Ground;

/// <summary>The weather that wets and dries the ground, evenly sampled; all series have one length. NaN is unknown.</summary>
public readonly ref struct GroundWeather
{
    /// <summary>Seconds between samples.</summary>
    public required double StepS { get; init; }

    /// <summary>Precipitation rate from each sample to the next, mm/h.</summary>
    public required ReadOnlySpan<double> RainMmPerH { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public required ReadOnlySpan<double> AirC { get; init; }

    /// <summary>Dew point, °C.</summary>
    public required ReadOnlySpan<double> DewPointC { get; init; }

    /// <summary>Wind at 10 m, m/s.</summary>
    public required ReadOnlySpan<double> WindMps { get; init; }

    /// <summary>Total cloud, fraction.</summary>
    public required ReadOnlySpan<double> Cloud { get; init; }

    /// <summary>Altitude of the Sun, degrees.</summary>
    public required ReadOnlySpan<double> SunAltitudeDeg { get; init; }
}
