using NightWatch.Planning.Camera;
using NightWatch.Planning.Judging;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>The frames and what happens to lens, cells, cards and subject while they run.</summary>
internal static class FrameEntries
{
    public static IEnumerable<TimelineEntry> Of(NightEvidence night, ShootingPlan plan) =>
        Lens(night, plan).Concat(plan.Sequence is { } sequence ? Frames(night, plan, sequence).Concat(Supplies(plan)).Concat(InFrame(plan, sequence)) : []);

    private static IEnumerable<TimelineEntry> Lens(NightEvidence night, ShootingPlan plan)
    {
        var lens = plan.Lens;
        var deposit = lens.Outcome.IsFrost ? "frost" : "dew";
        if (night.Watch.Kit.DewHeaterW > 0 && lens.HeaterOn is { } on && on < plan.Run.Span.End)
        {
            yield return new(on, TimelineStep.HeaterOn, "Dew heater on",
                $"The bare lens comes within {Said.Number(night.Limits.DewMarginC)} K of its {deposit} point; {Said.OneDecimal(lens.Outcome.HeaterNeededW)} W hold it.");
        }

        if (lens.Onset is { } onset && onset < plan.Run.Span.End)
        {
            yield return new(onset, TimelineStep.DewOnset, lens.Outcome.IsFrost ? "Frost on an unheated lens" : "Dew on an unheated lens",
                "The front element, cooling under the open sky, reaches the point at which air leaves water on it.");
        }

        if (plan.Power?.HeaterEmpty is { } empty)
            yield return new(empty, TimelineStep.HeaterEmpty, "Heater's battery empty", $"From here the lens is on its own against {deposit}: change the battery before.");
    }

    private static IEnumerable<TimelineEntry> Frames(NightEvidence night, ShootingPlan plan, Sequence sequence)
    {
        yield return new(sequence.Span.Start, TimelineStep.Start, "First frame",
            $"{sequence.Shots} frames of {Said.Number(sequence.ExposureS)} s every {Said.Number(sequence.IntervalS)} s "
            + $"play for {Said.Number(sequence.PlaybackS)} s at {Said.Number(sequence.PlaybackFps)} frames a second.");
        yield return new(sequence.Span.End, TimelineStep.LastFrame, "Last frame closes", LastFrameWhy(night, plan, sequence));
        if (plan.SkyLevel is { WashedOutFrom: { } from, LastSoundShot: { } shot })
        {
            yield return new(from, TimelineStep.LastSoundFrame, "Sky too bright from here",
                $"Frame {shot} is the last sound one: {(plan.SkyLevel.LiftedBy == SkyLift.Moon ? "the Moon" : "twilight")} lifts the sky past {Said.Percent(plan.SkyLevel.Limit)} of saturation.");
        }
    }

    private static IEnumerable<TimelineEntry> Supplies(ShootingPlan plan)
    {
        foreach (var swap in plan.Power?.Swaps ?? [])
            yield return new(swap, TimelineStep.SwapBattery, "Change the battery", "The pack in use is about empty by its derated energy; change it between two frames.");
        if (plan.Power?.Empty is { } empty)
            yield return new(empty, TimelineStep.PacksEmpty, "Last pack about empty", "The packs of the kit end here; one more goes in now, or the frames stop.");
        if (plan.Storage is { Full: { } full, ShotsThatFit: var fits })
            yield return new(full, TimelineStep.SwapCard, "Change the card", $"The cards of the kit are full after {fits} frames.");
    }

    private static IEnumerable<TimelineEntry> InFrame(ShootingPlan plan, Sequence sequence)
    {
        if (plan.Framing is not { } framing) yield break;
        if (framing.Enters is { } enters && enters > sequence.Span.Start)
            yield return new(enters, TimelineStep.SubjectEntersFrame, "Subject enters the frame", "Frames before this are without it.");
        if (framing.Leaves is { } leaves)
        {
            yield return new(leaves, TimelineStep.SubjectLeavesFrame, "Subject leaves the frame",
                $"It was in {Said.Percent(framing.ShareIn)} of the frames; {(framing.IsProgrammed ? "the move ends elsewhere" : "turn the camera after it or stop")}.");
        }
    }

    private static string LastFrameWhy(NightEvidence night, ShootingPlan plan, Sequence sequence)
    {
        var end = plan.Run.Span.End;
        if (sequence.WishedPlaybackS is { } wished && sequence.PlaybackS >= wished && (end - sequence.Span.End).TotalSeconds > sequence.IntervalS)
            return $"The wished {Said.Number(wished)} s of playback are in the bag.";
        if (night.Sky.SubjectWindows.Any(window => window.End == end)) return "The subject sinks out of its window here.";
        if (night.Sky.Moon.Rises.Any(rise => Duration.FromMinutes(30) > end - rise && rise - end < Duration.FromMinutes(10))) return "The Moon comes up.";
        if (night.Candidates.Any(window => window.End == end)) return "The sky pales after this.";
        return "The conditions of the run end here.";
    }
}
