namespace NightWatch.Weather.Fake;

/// <summary>Season and time of day. Crude on purpose: an hour's error in the invented weather hurts nobody.</summary>
/// <param name="SolarHour">0 to 24.</param>
/// <param name="Day">1 by day, 0 by night, smooth between.</param>
/// <param name="MeanC">Mean temperature of the day at sea level.</param>
internal readonly record struct SunClock(double SolarHour, double Day, double MeanC)
{
    private const double HoursPerYear = 8766;

    /// <summary>At a place and hour of the Unix epoch.</summary>
    public static SunClock At(in Spot spot, double hours)
    {
        // Day 172 of the year has the highest Sun, day 200 the warmest air (north).
        var sunWave = Math.Cos(2 * Math.PI * (hours / HoursPerYear - 172 / 365.25));
        var heatWave = Math.Cos(2 * Math.PI * (hours / HoursPerYear - 200 / 365.25));
        var solarHour = (hours + spot.LongitudeDeg / 15) % 24;
        solarHour = solarHour < 0 ? solarHour + 24 : solarHour;
        var lat = double.DegreesToRadians(spot.LatitudeDeg);
        var declination = double.DegreesToRadians(23.44) * sunWave;
        var sinAltitude = Math.Sin(lat) * Math.Sin(declination)
            + Math.Cos(lat) * Math.Cos(declination) * Math.Cos(Math.PI * (solarHour - 12) / 12);
        return new SunClock(
            solarHour,
            Shape.Step(-0.08, 0.12, sinAltitude),
            27 - 0.0072 * spot.LatitudeDeg * spot.LatitudeDeg + 0.24 * spot.LatitudeDeg * heatWave);
    }
}
