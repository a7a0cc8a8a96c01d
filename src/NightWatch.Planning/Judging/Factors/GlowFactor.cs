using NightWatch.Places;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>How dark the site is and where its glow domes stand against the subject's path. The site was chosen: this tells, it never decides.</summary>
internal sealed class GlowFactor : FactorRule
{
    private static readonly string[] Winds = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

    public override Factor Factor => Factor.Glow;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.SkyBrightness is not { } sky) return null;
        return new Reason(
            Factor, Severity.Ok, null, sky.MostTownGlowMag, null, Unit.Magnitudes, $"{Zenith(sky)} {Towns(night, sky)} {Contrast(night, sky)}".Replace("  ", " ", StringComparison.Ordinal).Trim(),
            Source: $"Walker 1977, PASP 89, 405, over {(sky.IsMeasured ? "the measured zenith" : "22.0 mag (Falchi et al. 2016)")}; {Gazetteer.Attribution}");
    }

    private static string Zenith(SkyBrightnessPlan sky) => sky.IsMeasured
        ? $"The moonless sky was measured at {Said.OneDecimal(sky.ZenithMag)} mag/arcsec² overhead (±0.1)."
        : $"The moonless sky is estimated at {Said.OneDecimal(sky.ZenithMag)} mag/arcsec² overhead ({Said.OneDecimal(sky.BrightestMag)} to {Said.OneDecimal(sky.DarkestMag)}) from the towns around; measure it once and enter it.";

    private static string Towns(NightEvidence night, SkyBrightnessPlan sky)
    {
        if (sky.Domes.Count == 0) return "No town lights the horizon.";
        var dome = sky.Domes[0];
        var text = $"Strongest glow: {dome.Town}, {Said.Number(Math.Round(dome.DistanceKm))} km to the {Wind(dome.AzimuthDeg)}";
        if (dome is { LeastApartDeg: { } apart, NearestAt: { } at })
            text += $", {Said.Number(Math.Round(apart))}° of azimuth from the subject at the nearest ({Said.Clock(at, night.Zone)})";
        return sky.MostTownGlowMag is { } most
            ? $"{text}; towns brighten the sky at {(night.Watch.Subject is Subject.Stars ? "the zenith" : "the subject")} by up to {Said.OneDecimal(most)} mag."
            : $"{text}.";
    }

    private static string Contrast(NightEvidence night, SkyBrightnessPlan sky) =>
        night.Watch.Subject is not Subject.Stars && sky is { LeastContrast: { } least, BestContrast: { } best, BestContrastAt: { } at }
            ? $"The subject stands out at {Said.Percents(least, best)} of its contrast overhead under a natural sky, best at {Said.Clock(at, night.Zone)}."
            : "";

    private static string Wind(double azimuthDeg) => Winds[(int)Math.Round(azimuthDeg / 22.5) % Winds.Length];
}
