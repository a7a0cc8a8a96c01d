using NightWatch.Planning.Camera;
using NodaTime;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>Whether the sky stays below saturation in the frames as Moon and dawn brighten it.</summary>
internal sealed class SkyLevelFactor : FactorRule
{
    public override Factor Factor => Factor.SkyLevel;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.SkyLevel is not { } level || plan.Sequence is not { } sequence) return null;
        var limit = night.Limits.SkyShareMost;
        return level.WashedOutFrom is { } from
            ? new Reason.SkyWashedOut(
                new Interval(from, Instant.Max(from, sequence.Span.End)), sequence.ExposureS, sequence.Iso, level.Most, limit, from, level.LiftedBy, level.LastSoundShot)
            {
                Mend = new Mend.LessExposure(),
            }
            : new Reason.SkyLevelHeld(sequence.ExposureS, sequence.Iso, level.Least, level.Most, limit, level.PastLimitFrom, level.LiftedBy);
    }
}
