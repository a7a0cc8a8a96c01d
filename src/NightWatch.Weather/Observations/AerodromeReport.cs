using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>What one routine or special aerodrome report (METAR, SPECI) says that matters to a night.</summary>
/// <param name="Station">ICAO location indicator, four letters.</param>
/// <param name="At">Time of observation.</param>
/// <param name="LatitudeDeg">Of the station.</param>
/// <param name="LongitudeDeg">Of the station.</param>
/// <param name="Sky">Cloud, within what such a report can tell.</param>
/// <param name="GustMps">Gusts; null: none reported, which is not calm.</param>
/// <param name="VisibilityM">Prevailing visibility, m, a lower bound where the report says so; null: not reported.</param>
/// <param name="IsWet">Rain, drizzle, snow, hail or showers at the station.</param>
/// <param name="IsFoggy">Fog at the station.</param>
public sealed record AerodromeReport(
    string Station, Instant At, double LatitudeDeg, double LongitudeDeg, ObservedSky Sky, double? GustMps, double? VisibilityM, bool IsWet, bool IsFoggy);
