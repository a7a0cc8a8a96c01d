using NightWatch.Planning.Reasons;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>How dark the site is and where its glow domes stand against the subject's path. The site was chosen: this tells, it never decides.</summary>
internal static class GlowJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(SkyBrightnessPlan sky, Subject subject)
    {
        var contrast = subject is not Subject.Stars && sky is { LeastContrast: { } least, BestContrast: { } best, BestContrastAt: { } at }
            ? new ContrastRange(least, best, at)
            : (ContrastRange?)null;
        return new SiteGlow(
            sky.IsMeasured, sky.ZenithMag, sky.BrightestMag, sky.DarkestMag, sky.Domes.Count > 0 ? sky.Domes[0] : null, sky.MostTownGlowMag)
        {
            IsOfZenith = subject is Subject.Stars,
            Contrast = contrast,
        };
    }
}
