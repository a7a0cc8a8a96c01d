using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>What a quantity can be at all. A feed's value outside is not weather but a fault, and stays unknown.</summary>
/// <remarks>
/// Bounds lie just outside the records of the WMO World Weather and Climate Extremes Archive (wmo.asu.edu: air temperature
/// −89.2 and 56.7 °C, gust 113 m/s, sea-level pressure 870 and 1084 hPa, 305 mm of rain within the hour). Fractions: models overshoot by
/// one or two hundredths when they are packed or interpolated; that much is clamped, more is refused.
/// </remarks>
internal static class Plausible
{
    private const double Overshoot = 0.02;
    private const double MostRainMmPerH = 450;

    /// <summary>The value, clamped where the overshoot is harmless; null when it cannot be.</summary>
    public static double? Value(InstantQuantity quantity, double value) => quantity switch
    {
        InstantQuantity.CloudAreaFraction or InstantQuantity.LowCloudAreaFraction or InstantQuantity.MediumCloudAreaFraction
            or InstantQuantity.HighCloudAreaFraction or InstantQuantity.FogAreaFraction or InstantQuantity.RelativeHumidity
            => Fraction(value),
        InstantQuantity.AirTemperatureC => Within(value, -95, 62),
        InstantQuantity.DewPointC => Within(value, -110, 40),
        InstantQuantity.WindMps => Within(value, 0, 120),
        InstantQuantity.WindFromDeg => Within(value, 0, 360) is { } deg ? Compass.Normal(deg) : null,
        InstantQuantity.VisibilityM => Within(value, 0, 500_000),
        InstantQuantity.CapeJPerKg => Within(value, 0, 15_000),
        InstantQuantity.SoilMoistureTop => Within(value, 0, 1),
        InstantQuantity.SeaLevelPressureHpa => Within(value, 850, 1100),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, null),
    };

    /// <summary>The value, clamped where the overshoot is harmless; null when it cannot be.</summary>
    public static double? Value(PeriodQuantity quantity, double value, Duration length) => quantity switch
    {
        PeriodQuantity.PrecipitationMm => Within(value, 0, MostRainMmPerH * length.TotalHours),
        PeriodQuantity.PrecipitationProbability or PeriodQuantity.ThunderProbability => Fraction(value),
        PeriodQuantity.GustMps => Within(value, 0, 130),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, null),
    };

    private static double? Fraction(double value) => Within(value, -Overshoot, 1 + Overshoot) is { } v ? Math.Clamp(v, 0, 1) : null;

    private static double? Within(double value, double least, double most) => value >= least && value <= most ? value : null;
}
