using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>What one routine or special aerodrome report (METAR, SPECI) says that matters to a night.</summary>
/// <param name="Station">ICAO location indicator, four letters.</param>
/// <param name="At">Time of observation.</param>
/// <param name="LatitudeDeg">Of the station.</param>
/// <param name="LongitudeDeg">Of the station.</param>
/// <param name="Sky">Cloud, within what such a report can tell.</param>
/// <param name="Sight">How much of the sky stood behind it.</param>
/// <param name="GustMps">Gusts; null: none reported, which is not calm.</param>
/// <param name="VisibilityM">Prevailing visibility, m, a lower bound where the report says so; null: not reported.</param>
/// <param name="IsWet">Rain, drizzle, snow, hail or showers at the station.</param>
/// <param name="IsFoggy">Fog over the station as high as a camera stands; neither shallow fog nor patches nor fog nearby.</param>
public sealed record AerodromeReport(
    string Station, Instant At, double LatitudeDeg, double LongitudeDeg, ObservedSky Sky, StationSight Sight,
    double? GustMps, double? VisibilityM, bool IsWet, bool IsFoggy)
{
    /// <summary>The least cloud that the report leaves room for, fraction: what the station cannot see is not there.
    /// Null: it says nothing.</summary>
    public double? LeastCloud => Sky.Fraction ?? (Sky.IsClearBelowOnly ? 0 : null);

    /// <summary>The most: what the station cannot see is covered. Null: it says nothing.</summary>
    public double? MostCloud => LeastCloud is null ? null : Sight.BlindAboveM is null ? Sky.Fraction : 1;
}
