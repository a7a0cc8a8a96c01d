namespace NightWatch.Sky.Places;

/// <summary>How far the air lifts a body, degrees.</summary>
/// <remarks>
/// For pointing a camera, not for events: those use airless altitudes, or the almanacs' 34′ at the horizon. Below −1° both formulae are
/// held at their value there. Weather moves refraction at the horizon by 0.3° from day to day.
/// </remarks>
public static class Refraction
{
    private const double LeastAltitudeDeg = -1;

    /// <summary>Lift of a body at a true (airless) altitude.</summary>
    /// <param name="trueAltitudeDeg">Degrees, −90 to 90.</param>
    /// <param name="pressureHpa">At the site (not reduced to sea level), hectopascals.</param>
    /// <param name="temperatureC">At the site, degrees Celsius.</param>
    /// <remarks>Saemundsson 1986, Sky and Telescope 72, 70, as in Meeus, Astronomical Algorithms, 2nd ed., eq. 16.4.</remarks>
    public static double OfTrueDeg(double trueAltitudeDeg, double pressureHpa = 1010, double temperatureC = 10)
    {
        var h = Math.Max(trueAltitudeDeg, LeastAltitudeDeg);
        return 1.02 / Tan(h + 10.3 / (h + 5.11)) / 60 * Density(pressureHpa, temperatureC);
    }

    /// <summary>Lift of a body seen at an apparent altitude.</summary>
    /// <param name="apparentAltitudeDeg">Degrees, −90 to 90.</param>
    /// <param name="pressureHpa">At the site (not reduced to sea level), hectopascals.</param>
    /// <param name="temperatureC">At the site, degrees Celsius.</param>
    /// <remarks>Bennett 1982, Journal of Navigation 35, 255; within 0.07′ from zenith to horizon.</remarks>
    public static double OfApparentDeg(double apparentAltitudeDeg, double pressureHpa = 1010, double temperatureC = 10)
    {
        var h = Math.Max(apparentAltitudeDeg, LeastAltitudeDeg);
        return 1 / Tan(h + 7.31 / (h + 4.4)) / 60 * Density(pressureHpa, temperatureC);
    }

    private static double Tan(double deg) => Math.Tan(double.DegreesToRadians(deg));

    private static double Density(double pressureHpa, double temperatureC) => pressureHpa / 1010 * 283 / (273 + temperatureC);
}
