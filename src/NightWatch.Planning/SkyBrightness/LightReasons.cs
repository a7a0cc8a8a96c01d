using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.SkyBrightness;

// What is found of the sky's own light and the towns'.

/// <summary>
/// Magnitudes by which the Moon brightens the sky at the subject at the worst of the run, and when; its illuminated fraction.
/// </summary>
public sealed record MoonLight(
    Severity Severity, Interval? When, double LitFraction, double BrighteningMag, Instant At, Threshold LimitsMag)
    : Reason(Factor.Moon, Severity, When, BrighteningMag, Held(Severity, LimitsMag), Unit.Magnitudes, Sources.Formula.MoonLight);

/// <summary>
/// The moonless sky overhead (V mag/arcsec², with its likely ends), the strongest dome, and what the towns do to the subject's
/// sky.
/// </summary>
public sealed record SiteGlow(
    bool IsMeasured, double ZenithMag, double BrightestMag, double DarkestMag, PathDome? Strongest, double? MostTownGlowMag)
    : Reason(
        Factor.Glow, Severity.Ok, null, MostTownGlowMag, null, Unit.Magnitudes,
        IsMeasured ? Sources.Formula.TownsUnderMeasuredZenith : Sources.Formula.TownsOverNaturalSky)
{
    /// <summary>The towns' light is told for the zenith, as there is no subject.</summary>
    public bool IsOfZenith { get; init; }

    /// <summary>How the subject stands out; null: there is none.</summary>
    public ContrastRange? Contrast { get; init; }
}

/// <summary>Shares of the contrast that the subject would have overhead under a natural sky.</summary>
/// <param name="Least">At the worst of the run.</param>
/// <param name="Best">At the best of it.</param>
/// <param name="BestAt">When that is.</param>
public readonly record struct ContrastRange(double Least, double Best, Instant BestAt);
