using NightWatch.Places;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>How dark the site is and where its glow domes stand against the subject's path. The site was chosen: this tells, it never decides.</summary>
internal sealed class GlowFactor : FactorRule
{
    public override Factor Factor => Factor.Glow;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.SkyBrightness is not { } sky) return null;
        var contrast = night.Watch.Subject is not Subject.Stars && sky is { LeastContrast: { } least, BestContrast: { } best, BestContrastAt: { } at }
            ? new Reason.ContrastRange(least, best, at)
            : (Reason.ContrastRange?)null;
        return new Reason.SiteGlow(
            sky.IsMeasured, sky.ZenithMag, sky.BrightestMag, sky.DarkestMag, sky.Domes.Count > 0 ? sky.Domes[0] : null, sky.MostTownGlowMag)
        {
            IsOfZenith = night.Watch.Subject is Subject.Stars,
            Contrast = contrast,
        };
    }
}
