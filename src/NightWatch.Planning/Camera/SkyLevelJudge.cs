using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>Whether the sky stays below saturation in the frames as Moon and dawn brighten it.</summary>
internal static class SkyLevelJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(SkyLevelPlan level, Sequence sequence, Limits limits)
    {
        var limit = limits.SkyShareMost;
        return level.WashedOutFrom is { } from
            ? new SkyWashedOut(
                new Interval(from, Instant.Max(from, sequence.Span.End)),
                sequence.ExposureS,
                sequence.Iso,
                level.Most,
                limit,
                from,
                level.LiftedBy,
                level.LastSoundShot)
            {
                Mend = new Mend.LessExposure(),
            }
            : new SkyLevelHeld(sequence.ExposureS, sequence.Iso, level.Least, level.Most, limit, level.PastLimitFrom, level.LiftedBy);
    }
}
