using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches;
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

/// <summary>One factor's finding over a night: its figures in units, and no words. Closed: the cases beside this file are all there are.</summary>
/// <remarks>
/// A case names what was found and carries the figures behind it; sentences are made of them at the very end, in the reader's language
/// and units. What every case has in common stands here: a factor's share in the worth of a moment would be one member more.
/// </remarks>
public abstract partial record Reason
{
    private Reason(Factor factor, Severity severity, Interval? when, double? value, double? limit, Unit unit, Formula? formula)
    {
        (Factor, Severity, When) = (factor, severity, when);
        (Value, Limit, Unit) = (value, limit, unit);
        Formula = formula;
    }

    /// <summary>What about.</summary>
    public Factor Factor { get; }

    /// <summary>How bad.</summary>
    public Severity Severity { get; }

    /// <summary>The stretch of the night it is true for; null: all of it.</summary>
    public Interval? When { get; }

    /// <summary>The one figure that was judged; null: unknown.</summary>
    public double? Value { get; }

    /// <summary>What it was held against; null where there is none.</summary>
    public double? Limit { get; }

    /// <summary>Of both.</summary>
    public Unit Unit { get; }

    /// <summary>Formula or convention behind the figures; null only where the case says it otherwise.</summary>
    public Formula? Formula { get; }

    /// <summary>What would make it ok; null if nothing would, or nothing need.</summary>
    public Mend? Mend { get; init; }

    /// <summary>The figure is not known.</summary>
    public bool IsUnknown => Value is null;

    /// <summary>Can hurt people; stands first.</summary>
    public bool IsHazard => Factor is Factor.Thunder or Factor.Hazard && Severity > Severity.Ok;

    /// <summary>The limit that was passed, or the first one where none was.</summary>
    private static double Held(Severity severity, Threshold limits) => severity == Severity.Stop ? limits.Stop : limits.Caution;
}
