using NightWatch.Planning.Sources;
using NodaTime;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>A glow dome against the subject's way over the sky.</summary>
/// <param name="Town">The town that gives most of it.</param>
/// <param name="Population">Inhabitants of that town.</param>
/// <param name="DistanceKm">Distance to that town, km.</param>
/// <param name="AzimuthDeg">Azimuth of the dome, degrees from north through east.</param>
/// <param name="BrighteningMag">Magnitudes by which it brightens the natural sky at 45° altitude, uncertain by a factor of three in
/// light.</param>
/// <param name="LeastApartDeg">Least difference of azimuth to the subject in the run, degrees; null without subject or run.</param>
/// <param name="NearestAt">When that is; null with it.</param>
public sealed record PathDome(
    string Town, int Population, double DistanceKm, double AzimuthDeg, double BrighteningMag, double? LeastApartDeg, Instant? NearestAt);

/// <summary>
/// How dark the site's moonless sky is, where its towns stand against the subject's path, and how well the subject stands out.
/// </summary>
public sealed record SkyBrightnessPlan
{
    /// <summary>Measured at the site; otherwise estimated from the towns around it.</summary>
    public required bool IsMeasured { get; init; }

    /// <summary>Zenith brightness without Moon and twilight, V mag/arcsec².</summary>
    public required double ZenithMag { get; init; }

    /// <summary>Likely darkest, V mag/arcsec².</summary>
    public required double DarkestMag { get; init; }

    /// <summary>Likely brightest, V mag/arcsec².</summary>
    public required double BrightestMag { get; init; }

    /// <summary>V-band extinction used, magnitudes per air mass.</summary>
    public required double ExtinctionMagPerAirmass { get; init; }

    /// <summary>Directions lit up most, strongest first, at most six.</summary>
    public required IReadOnlyList<PathDome> Domes { get; init; }

    /// <summary>
    /// Magnitudes by which towns brighten the sky at the subject (at the zenith for stars) at the worst of the run; null without a run.
    /// </summary>
    public required double? MostTownGlowMag { get; init; }

    /// <summary>When that is; null with it.</summary>
    public required Instant? MostTownGlowAt { get; init; }

    /// <summary>
    /// Greatest contrast of the subject in the run, as a share of what it would have overhead under a natural sky; null without a run.
    /// </summary>
    public required double? BestContrast { get; init; }

    /// <summary>When that is; null with it.</summary>
    public required Instant? BestContrastAt { get; init; }

    /// <summary>Least contrast of the subject in the run; null without a run.</summary>
    public required double? LeastContrast { get; init; }

    /// <summary>Where the figures come from, the gazetteer's attribution included.</summary>
    public Formula Source => IsMeasured ? Formula.MeasuredSky : Formula.EstimatedSky;
}
