using NightWatch.Sky.Frames;

namespace NightWatch.Sky.Events;

/// <summary>The 34′ by which almanacs raise a body at the horizon, and what becomes of it higher up.</summary>
internal static class HorizonRefraction
{
    /// <summary>Its sine.</summary>
    public static readonly double Sin = Math.Sin(34 * Angles.Arcminute);

    /// <summary>Its cosine.</summary>
    public static readonly double Cos = Math.Cos(34 * Angles.Arcminute);

    private const double AtHorizonDeg = 34 / 60.0;

    private static readonly double Scale = AtHorizonDeg / Saemundsson(-AtHorizonDeg);

    /// <summary>Refraction at an airless altitude, degrees: 34′ where the body is seen at 0°, less above.</summary>
    /// <remarks>
    /// Saemundsson 1986, Sky and Telescope 72, 70, for 1010 hPa and 10 °C, scaled by 0.99 so that a level skyline gives the almanac's
    /// risings. Below −1° that of −1°.
    /// </remarks>
    public static double DegAt(double trueAltitudeDeg) => Scale * Saemundsson(Math.Max(trueAltitudeDeg, -1));

    private static double Saemundsson(double h) => 1.02 / 60 / Math.Tan((h + 10.3 / (h + 5.11)) * Angles.Degree);
}
