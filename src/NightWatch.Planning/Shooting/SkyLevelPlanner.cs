using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Optics;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Shooting;

/// <summary>Follows the sky's level in the frames through a sequence.</summary>
internal static class SkyLevelPlanner
{
    /// <param name="above">The sky.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="kit">Aperture.</param>
    /// <param name="sequence">Exposure, ISO, span.</param>
    /// <param name="mostShare">Share of saturation from which a frame counts as washed out.</param>
    public static SkyLevelPlan Plan(SkyTrack above, NightGrid grid, Kit kit, Sequence sequence, double mostShare)
    {
        var (first, last) = grid.Cells(sequence.Span);
        Span<double> shares = stackalloc double[last - first + 1];
        var least = double.PositiveInfinity;
        var most = 0.0;
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = SkyExposure.Share(above.Steps[first + i].Light.CandelaPerM2, kit.FNumber, sequence.ExposureS, sequence.Iso);
            least = Math.Min(least, shares[i]);
            most = Math.Max(most, shares[i]);
        }

        if (Crossing.FirstAtOrAbove(shares, mostShare, NightGrid.Step.TotalSeconds) is not { } seconds)
            return new SkyLevelPlan(least, most, null, sequence.Shots);
        var from = Instant.Max(sequence.Span.Start, grid.At(first) + Duration.FromSeconds(seconds));
        var sound = (int)Math.Floor(((from - sequence.Span.Start).TotalSeconds - sequence.ExposureS) / sequence.IntervalS) + 1;
        return new SkyLevelPlan(least, most, from, sound > 0 ? Math.Min(sound, sequence.Shots) : null);
    }
}
