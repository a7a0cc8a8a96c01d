using NodaTime;

namespace NightWatch.Planning.Judging;

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
}

/// <summary>How bad. Ordered.</summary>
public enum Severity
{
    /// <summary>Within the limits.</summary>
    Ok,

    /// <summary>Makes a night marginal at best.</summary>
    Caution,

    /// <summary>Stops it.</summary>
    Stop,
}

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

/// <summary>One factor's finding: the number, its limit, when it applies.</summary>
/// <param name="Factor">What about.</param>
/// <param name="Severity">How bad.</param>
/// <param name="When">The stretch of the night it is true for; null: all of it.</param>
/// <param name="Value">The figure; null: unknown.</param>
/// <param name="Limit">What it was held against; null where there is none.</param>
/// <param name="Unit">Of both.</param>
/// <param name="Text">One plain English sentence with the number in metric units, for tables, letters and JSON.</param>
/// <param name="Fix">What would make it ok ("a heater of 3 W from 23:10"); null if nothing would.</param>
/// <param name="Source">Formula or convention behind the figure.</param>
public sealed record Reason(
    Factor Factor, Severity Severity, Interval? When, double? Value, double? Limit, Unit Unit, string Text, string? Fix = null, string? Source = null)
{
    /// <summary>The figure is not known.</summary>
    public bool IsUnknown => Value is null;
}
