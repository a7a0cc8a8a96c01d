namespace NightWatch.Planning.Reasons;

/// <summary>The unit of a reason's figure; words and conversions come last, when it is said.</summary>
public enum Unit
{
    /// <summary>A plain count.</summary>
    Count,

    /// <summary>0 to 1, said as per cent.</summary>
    Fraction,

    /// <summary>Millimetres of water.</summary>
    Millimetres,

    /// <summary>Metres per second.</summary>
    MetresPerSecond,

    /// <summary>Degrees Celsius.</summary>
    Celsius,

    /// <summary>A difference of temperatures, kelvins.</summary>
    Kelvin,

    /// <summary>Metres.</summary>
    Metres,

    /// <summary>Kilometres.</summary>
    Kilometres,

    /// <summary>Minutes.</summary>
    Minutes,

    /// <summary>Hours.</summary>
    Hours,

    /// <summary>Magnitudes.</summary>
    Magnitudes,

    /// <summary>Watt-hours.</summary>
    WattHours,

    /// <summary>Watts.</summary>
    Watts,

    /// <summary>Gigabytes, 10⁹.</summary>
    Gigabytes,

    /// <summary>Degrees of arc.</summary>
    Degrees,
}
