using NightWatch.Planning.Grid;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>Follows the sky's level in the frames through a sequence.</summary>
internal static class SkyLevelPlanner
{
    /// <param name="above">The sky.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="kit">The kit, for its aperture.</param>
    /// <param name="sequence">Exposure, ISO, span.</param>
    /// <param name="mostShare">Share of saturation from which a frame counts as washed out.</param>
    public static SkyLevelPlan Plan(SkyTrack above, NightGrid grid, Kit kit, Sequence sequence, double mostShare)
    {
        var (first, last) = grid.Cells(sequence.Span);
        Span<double> shares = stackalloc double[grid.Count - first];
        var least = double.PositiveInfinity;
        var most = 0.0;
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = SkyExposure.Share(above.Steps[first + i].Light.CandelaPerM2, kit.FNumber, sequence.ExposureS, sequence.Iso);
            if (first + i > last) continue;
            least = Math.Min(least, shares[i]);
            most = Math.Max(most, shares[i]);
        }

        var lifted = Crossing.FirstAtOrAbove(shares, mostShare, NightGrid.Step.TotalSeconds);
        Instant? past = lifted is { } s ? Instant.Max(sequence.Span.Start, grid.At(first) + Duration.FromSeconds(s)) : null;
        var washed = past < sequence.Span.End ? past : null;
        var sound = washed is { } from
            ? (int)Math.Floor(((from - sequence.Span.Start).TotalSeconds - sequence.ExposureS) / sequence.IntervalS) + 1
            : sequence.Shots;
        return new SkyLevelPlan
        {
            AtStart = shares[0],
            AtEnd = shares[last - first],
            Least = least,
            Most = most,
            Limit = mostShare,
            WashedOutFrom = washed,
            LastSoundShot = sound > 0 ? Math.Min(sound, sequence.Shots) : null,
            PastLimitFrom = past,
            LiftedBy = lifted is { } seconds
                ? LiftAt(above.Steps[Math.Min(first + (int)Math.Ceiling(seconds / NightGrid.Step.TotalSeconds), grid.Count - 1)].Light)
                : null,
        };
    }

    private static SkyLift LiftAt(SkyLight light) => light.MoonNl > light.TwilightNl ? SkyLift.Moon : SkyLift.Twilight;
}
