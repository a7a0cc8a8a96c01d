namespace NightWatch.Planning.Watches;

/// <summary>Two ends of a figure that takes worth from a frame.</summary>
/// <param name="Caution">Up to here it takes nothing.</param>
/// <param name="Stop">From here on it takes all.</param>
public readonly record struct Threshold(double Caution, double Stop);

/// <summary>All limits of a watch, with the defaults in this one place.</summary>
/// <remarks>
/// The defaults are common practice in the trade where no source is named; every one can be set per watch.
/// </remarks>
public sealed record Limits
{
    /// <summary>Least altitude of the subject, degrees: below 10 the air takes half a magnitude and the haze the rest.</summary>
    public double MinAltitudeDeg { get; init; } = 10;

    /// <summary>Minutes of good frames that make a night usable.</summary>
    public double UsableRunMin { get; init; } = 90;

    /// <summary>
    /// Total cloud, fraction: up to the first a frame counts in full, from the second on for nothing. Two oktas are a clear sky by WMO
    /// usage; at 45 % nearly every frame has cloud.
    /// </summary>
    public Threshold Cloud { get; init; } = new(0.20, 0.45);

    /// <summary>Precipitation from which a moment is worthless, mm in an hour: what a gauge calls measurable.</summary>
    public double PrecipitationMmPerH { get; init; } = 0.1;

    /// <summary>Probability of precipitation, fraction.</summary>
    public Threshold PrecipitationProbability { get; init; } = new(0.25, 0.50);

    /// <summary>Gust, m/s: 9 moves a loaded rail between frames, 14 (near gale) throws a tripod over.</summary>
    public Threshold GustMps { get; init; } = new(9, 14);

    /// <summary>Share of the run in fog, fraction.</summary>
    public Threshold Fog { get; init; } = new(0.10, 0.40);

    /// <summary>Visibility below this counts as fog, metres (WMO's definition of fog).</summary>
    public double FogVisibilityM { get; init; } = 1000;

    /// <summary>Probability of thunder, fraction; the stop is also a hazard.</summary>
    public Threshold Thunder { get; init; } = new(0.10, 0.25);

    /// <summary>Sky at the subject from which on a frame counts in full, V mag/arcsec²; null: as usual for the subject.</summary>
    public double? DarkFullMag { get; init; }

    /// <summary>Sky at the subject below which a frame counts for nothing, V mag/arcsec²; null: as usual for the subject.</summary>
    public double? DarkNothingMag { get; init; }

    /// <summary>Longest worthless gap that a run bridges, minutes: a cloud that passes, a shower.</summary>
    public double LongestGapMin { get; init; } = 20;

    /// <summary>
    /// Distance of the lens from its dew point that the heater holds, K: the sky's radiation is known to about ±15 W/m², 1.5 K in calm air.
    /// </summary>
    public double DewMarginC { get; init; } = 2;

    /// <summary>Wet ground is a stop, not a caution.</summary>
    public bool DryGroundNeeded { get; init; }

    /// <summary>Share of saturation of the sky in a frame from which it counts as washed out.</summary>
    public double SkyShareMost { get; init; } = 0.5;

    /// <summary>Margin after the dark window opens, minutes.</summary>
    public double StartMarginMin { get; init; }

    /// <summary>Margin before the dark window closes, minutes.</summary>
    public double EndMarginMin { get; init; }

    /// <summary>Age from which a forecast cannot carry a go, hours: every feed here issues at least twice in that time.</summary>
    public double ForecastAgeH { get; init; } = 12;

    /// <summary>
    /// Lead beyond which a night is an outlook only, hours: total cloud is forecast no better than the climate from there (Ye and Chen
    /// 2013, MNRAS 428, 3288).
    /// </summary>
    public double OutlookOnlyFromH { get; init; } = 120;
}
