using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Rain;

namespace NightWatch.Planning.Ground;

/// <summary>What one stands on at the first frame.</summary>
internal static class GroundJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(GroundPlan ground, Site site, RainBefore rain, Limits limits)
    {
        var dryNeeded = limits.DryGroundNeeded;
        if (ground.AtStart == GroundState.Unknown)
        {
            return dryNeeded
                ? new GroundNotKnown(Severity.Caution, rain) { Mend = new Mend.Knowledge(Mend.Missing.RainBefore) }
                : new GroundNotKnown(Severity.Ok, rain);
        }

        var severity = ground.AtStart switch
        {
            GroundState.Wet => dryNeeded ? Severity.Stop : Severity.Caution,
            GroundState.Damp => dryNeeded ? Severity.Caution : Severity.Ok,
            _ => Severity.Ok,
        };
        var traits = GroundTraits.Of(site.Ground);
        return new GroundWetness(
            severity,
            site.Ground,
            ground.AtArrival,
            ground.AtStart,
            ground.WaterMm,
            ground.DryFrom,
            dryNeeded ? traits.DampMm : traits.WetMm)
        {
            Mend = severity == Severity.Ok ? null : new Mend.FirmSpots(),
        };
    }
}
