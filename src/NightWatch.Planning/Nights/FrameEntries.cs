using NightWatch.Planning.Camera;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>The frames and what happens to lens, cells, cards and subject while they run.</summary>
internal static class FrameEntries
{
    public static IEnumerable<TimelineEntry> Of(NightEvidence night, ShootingPlan plan) =>
        Lens(night, plan)
            .Concat(
                plan.Sequence is { } sequence ? Frames(night, plan, sequence).Concat(Supplies(plan)).Concat(InFrame(plan, sequence)) : []);

    private static IEnumerable<TimelineEntry> Lens(NightEvidence night, ShootingPlan plan)
    {
        var lens = plan.Lens;
        var isFrost = lens.Outcome.IsFrost;
        if (night.Watch.Kit.DewHeaterW > 0 && lens.HeaterOn is { } on && on < plan.Run.Span.End)
            yield return new TimelineEntry.HeaterOn(on, night.Limits.DewMarginC, isFrost, lens.Outcome.HeaterNeededW);
        if (lens.Onset is { } onset && onset < plan.Run.Span.End) yield return new TimelineEntry.DewOnset(onset, isFrost);
        if (plan.Power?.HeaterEmpty is { } empty) yield return new TimelineEntry.HeaterEmpty(empty, isFrost);
    }

    private static IEnumerable<TimelineEntry> Frames(NightEvidence night, ShootingPlan plan, Sequence sequence)
    {
        yield return new TimelineEntry.FirstFrame(
            sequence.Span.Start, sequence.Shots, sequence.ExposureS, sequence.IntervalS, sequence.PlaybackS, sequence.PlaybackFps);
        yield return LastFrame(night, plan, sequence);
        if (plan.SkyLevel is { WashedOutFrom: { } from, LastSoundShot: { } shot })
            yield return new TimelineEntry.SkyTooBright(from, shot, plan.SkyLevel.LiftedBy, plan.SkyLevel.Limit);
    }

    private static IEnumerable<TimelineEntry> Supplies(ShootingPlan plan)
    {
        foreach (var swap in plan.Power?.Swaps ?? []) yield return new TimelineEntry.Bare(swap, TimelineStep.SwapBattery);
        if (plan.Power?.Empty is { } empty) yield return new TimelineEntry.Bare(empty, TimelineStep.PacksEmpty);
        if (plan.Storage is { Full: { } full, ShotsThatFit: var fits }) yield return new TimelineEntry.CardFull(full, fits);
    }

    private static IEnumerable<TimelineEntry> InFrame(ShootingPlan plan, Sequence sequence)
    {
        if (plan.Framing is not { } framing) yield break;
        if (framing.Enters is { } enters && enters > sequence.Span.Start)
            yield return new TimelineEntry.Bare(enters, TimelineStep.SubjectEntersFrame);
        if (framing.Leaves is { } leaves) yield return new TimelineEntry.SubjectLeaves(leaves, framing.ShareIn, framing.IsProgrammed);
    }

    private static TimelineEntry.LastFrame LastFrame(NightEvidence night, ShootingPlan plan, Sequence sequence)
    {
        var at = sequence.Span.End;
        var end = plan.Run.Span.End;
        if (sequence.WishedPlaybackS is { } wished && sequence.PlaybackS >= wished && (end - at).TotalSeconds > sequence.IntervalS)
            return new(at, LastFrameCause.WishMet, wished);
        if (night.Sky.SubjectWindows.Any(window => window.End == end)) return new(at, LastFrameCause.SubjectSinks);
        if (night.Sky.Moon.Rises.Any(rise => Duration.FromMinutes(30) > end - rise && rise - end < Duration.FromMinutes(10)))
            return new(at, LastFrameCause.MoonRises);
        return new(at, night.Candidates.Any(window => window.End == end) ? LastFrameCause.SkyPales : LastFrameCause.RunEnds);
    }
}
