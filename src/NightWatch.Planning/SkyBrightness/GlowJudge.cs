using NightWatch.Planning.Reasons;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>
/// How dark the site is, where its glow domes stand against the subject's path, and what that leaves of the frames' worth.
/// </summary>
internal static class GlowJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(SkyBrightnessPlan sky, Subject subject, Severity severity, DarkRange dark)
    {
        var contrast = subject is not Subject.Stars && sky is { LeastContrast: { } least, BestContrast: { } best, BestContrastAt: { } at }
            ? new ContrastRange(least, best, at)
            : (ContrastRange?)null;
        return new SiteGlow(
            severity,
            sky.IsMeasured,
            sky.ZenithMag,
            sky.BrightestMag,
            sky.DarkestMag,
            sky.Domes.Count > 0 ? sky.Domes[0] : null,
            sky.MostTownGlowMag)
        {
            IsOfZenith = subject is Subject.Stars,
            Contrast = contrast,
            Dark = dark,
            Mend = severity == Severity.Ok ? null : new Mend.DarkerSite(dark.Levels.FullMag),
        };
    }
}
