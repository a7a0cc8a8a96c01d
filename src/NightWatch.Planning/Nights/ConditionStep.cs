using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>Everything known at one grid step of the night. Null is unknown.</summary>
public sealed record ConditionStep
{
    /// <summary>Start of the step.</summary>
    public required Instant At { get; init; }

    /// <summary>The Sun's centre above the horizon, degrees, topocentric, without refraction.</summary>
    public required double SunAltitudeDeg { get; init; }

    /// <summary>The Moon's centre, topocentric, without refraction.</summary>
    public required Horizontal Moon { get; init; }

    /// <summary>The subject, geometric; null for stars.</summary>
    public required Horizontal? Subject { get; init; }

    /// <summary>Total cloud, fraction.</summary>
    public double? Cloud { get; init; }

    /// <summary>Low cloud, fraction.</summary>
    public double? LowCloud { get; init; }

    /// <summary>Medium cloud, fraction.</summary>
    public double? MediumCloud { get; init; }

    /// <summary>High cloud, fraction.</summary>
    public double? HighCloud { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public double? AirC { get; init; }

    /// <summary>Dew point, °C.</summary>
    public double? DewPointC { get; init; }

    /// <summary>Relative humidity, fraction.</summary>
    public double? Humidity { get; init; }

    /// <summary>Wind at 10 m, m/s.</summary>
    public double? WindMps { get; init; }

    /// <summary>Gust, m/s.</summary>
    public double? GustMps { get; init; }

    /// <summary>Precipitation rate, mm/h.</summary>
    public double? RainMmPerH { get; init; }

    /// <summary>Probability of precipitation, fraction.</summary>
    public double? RainProbability { get; init; }

    /// <summary>Fog cover, fraction.</summary>
    public double? Fog { get; init; }

    /// <summary>Visibility, m.</summary>
    public double? VisibilityM { get; init; }

    /// <summary>Probability of thunder, fraction.</summary>
    public double? ThunderProbability { get; init; }

    /// <summary>Temperature of the unheated front element, °C.</summary>
    public double? LensC { get; init; }

    /// <summary>Element temperature less dew (or frost) point, K: at zero or below dew settles.</summary>
    public double? LensDewMarginK { get; init; }

    /// <summary>The same with the kit's heater on in time, K; null without a heater.</summary>
    public double? LensHeatedDewMarginK { get; init; }

    /// <summary>Sky brightness at the subject (or the zenith for stars), V mag/arcsec².</summary>
    public double? SkyMag { get; init; }

    /// <summary>The Moon's share in it, magnitudes brighter than without.</summary>
    public double MoonBrighteningMag { get; init; }

    /// <summary>
    /// How well a faint subject stands out there, as a share of its contrast overhead under a natural sky: 1 is that, 0 is below the
    /// horizon.
    /// </summary>
    public double? Contrast { get; init; }

    /// <summary>Share of saturation the sky reaches in the planned exposure.</summary>
    public double? SkyShare { get; init; }

    /// <summary>What a frame taken now is worth.</summary>
    public required StepWorth Worth { get; init; }
}

/// <summary>Worth of a frame, 0 to 1, as the product of its shares. Null is unknown.</summary>
/// <param name="Value">Worth of a frame, 0 to 1: the product of the shares below; null: the cloud is not known.</param>
/// <param name="Clear">Cloud and fog before the subject; null: the cloud is not known.</param>
/// <param name="Dark">The sky's light at the subject: nature, towns, Moon, twilight, the air.</param>
/// <param name="Steady">The rail in the gusts; unknown wind takes nothing.</param>
/// <param name="Dry">0 in rain; unknown rain takes nothing.</param>
/// <param name="Framed">The subject in the frame; 1 without a plan, as those below.</param>
/// <param name="LensClear">No dew or frost on the lens, with the heater that is powered then.</param>
/// <param name="Powered">A pack is left for the camera.</param>
/// <param name="Stored">A card has room.</param>
/// <param name="Exposed">The sky does not wash the frame out.</param>
public sealed record StepWorth(
    double? Value,
    double? Clear,
    double Dark,
    double Steady,
    double Dry,
    double Framed,
    double LensClear,
    double Powered,
    double Stored,
    double Exposed);
