using NightWatch.Planning.Shooting;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>Every clock time of the day and night, in order, with its reason.</summary>
internal static class TimelineBuilder
{
    /// <summary>Packing unhurriedly (common practice, no source).</summary>
    private static readonly Duration Packing = Duration.FromMinutes(45);

    /// <summary>A nap long enough for a sleep cycle (common practice, no source).</summary>
    private static readonly Duration Nap = Duration.FromMinutes(90);

    /// <summary>The sky's own times, and with a run the photographer's.</summary>
    /// <param name="night">The evidence.</param>
    /// <param name="plan">The run; null: only what the sky does.</param>
    public static IReadOnlyList<TimelineEntry> Of(NightEvidence night, ShootingPlan? plan)
    {
        var entries = new List<TimelineEntry>(24);
        entries.AddRange(Sun(night.Sky.Sun));
        entries.AddRange(Moon(night.Sky.Moon));
        entries.AddRange(SubjectTimes(night));
        if (plan is not null)
        {
            entries.AddRange(Before(night, plan, plan.Leave));
            entries.AddRange(Shooting(night, plan));
            entries.AddRange(After(night, plan));
        }

        return [.. entries.OrderBy(entry => entry.At).ThenBy(entry => entry.Step)];
    }

    private static IEnumerable<TimelineEntry> Sun(SunEvents sun)
    {
        if (sun.Set is { } set) yield return new(set, TimelineStep.Sunset, "Sunset");
        if (sun.CivilDusk is { } civil) yield return new(civil, TimelineStep.CivilDusk, "Civil dusk", "The Sun is 6° down; brightest stars show.");
        if (sun.NauticalDusk is { } nautical) yield return new(nautical, TimelineStep.NauticalDusk, "Nautical dusk", "The Sun is 12° down; enough stars to focus on.");
        if (sun.AstronomicalDusk is { } dusk) yield return new(dusk, TimelineStep.AstronomicalDusk, "Astronomical dusk", "The Sun is 18° down; the sky is dark.");
        if (sun.AstronomicalDawn is { } dawn) yield return new(dawn, TimelineStep.AstronomicalDawn, "Astronomical dawn", "The Sun comes within 18° of the horizon; the sky begins to pale.");
        if (sun.NauticalDawn is { } nauticalDawn) yield return new(nauticalDawn, TimelineStep.NauticalDawn, "Nautical dawn");
        if (sun.CivilDawn is { } civilDawn) yield return new(civilDawn, TimelineStep.CivilDawn, "Civil dawn");
        if (sun.Rise is { } rise) yield return new(rise, TimelineStep.Sunrise, "Sunrise");
    }

    private static IEnumerable<TimelineEntry> Moon(MoonEvents moon)
    {
        var lit = Said.Percent(moon.IlluminatedFraction);
        foreach (var at in moon.Rises) yield return new(at, TimelineStep.Moonrise, "Moonrise", $"The Moon is {lit} lit.");
        foreach (var at in moon.Sets) yield return new(at, TimelineStep.Moonset, "Moonset", $"The Moon is {lit} lit.");
    }

    private static IEnumerable<TimelineEntry> SubjectTimes(NightEvidence night)
    {
        if (night.Watch.Subject is Subject.Stars) yield break;
        var span = night.Sky.Span;
        var limit = Said.Number(night.Limits.MinAltitudeDeg);
        foreach (var window in night.Sky.SubjectWindows)
        {
            if (window.Start > span.Start)
                yield return new(window.Start, TimelineStep.SubjectClear, "Subject clears the skyline", $"It stands above {limit}° and the skyline from here.");
            if (window.End < span.End)
                yield return new(window.End, TimelineStep.SubjectLost, "Subject is lost", $"It sinks below {limit}° or the skyline.");
        }

        if (night.Sky.Subject is { Transit: { } transit, TransitAltitudeDeg: { } altitude } && altitude > 0)
            yield return new(transit, TimelineStep.SubjectTransit, "Subject at its highest", $"It culminates at {Said.OneDecimal(altitude)}°.");
    }

    private static IEnumerable<TimelineEntry> Before(NightEvidence night, ShootingPlan plan, LeaveTimes times)
    {
        var outing = night.Watch.Outing;
        var pack = times.LeaveHome - Packing;
        var leaves = $"The drive takes {Said.Number(outing.DriveMin)} min; leaving after {Said.Clock(times.Latest, night.Zone)} would cut the run.";
        yield return new(pack - Nap, TimelineStep.Sleep, "Sleep an hour and a half",
            $"By the drive home you will have been up about {Said.Number(HoursAwake(night, plan))} h without it.");
        yield return new(pack, TimelineStep.Pack, "Pack", "Before the drive, by the list for this night.");
        yield return new(times.LeaveHome, TimelineStep.LeaveHome, "Leave home", leaves);
        yield return new(times.Arrive, TimelineStep.Arrive, times.InDaylight ? "Arrive and set up by daylight" : "Arrive and set up",
            times.InDaylight
                ? $"Set-up takes {Said.Number(outing.SetUpMin)} min and ends before sunset."
                : $"Set-up takes {Said.Number(outing.SetUpMin)} min and reaches into the dark; take head lamps and know the way back.");
        yield return new(times.FocusAndTest, TimelineStep.FocusAndTest, "Focus and test frames",
            "Focus on a bright star at full magnification; short frames at high ISO for framing and level; then one frame as planned.");
    }

    private static IEnumerable<TimelineEntry> Shooting(NightEvidence night, ShootingPlan plan)
    {
        var lens = plan.Lens;
        if (night.Watch.Kit.DewHeaterW > 0 && lens.HeaterOn is { } on && on < plan.Run.Span.End)
        {
            yield return new(on, TimelineStep.HeaterOn, "Dew heater on",
                $"The bare lens comes within {Said.Number(night.Limits.DewMarginC)} K of its {(lens.Outcome.IsFrost ? "frost" : "dew")} point; {Said.OneDecimal(lens.Outcome.HeaterNeededW)} W hold it.");
        }

        if (lens.Onset is { } onset && onset < plan.Run.Span.End)
        {
            yield return new(onset, TimelineStep.DewOnset, lens.Outcome.IsFrost ? "Frost on an unheated lens" : "Dew on an unheated lens",
                "The front element, cooling under the open sky, reaches the point at which air leaves water on it.");
        }

        foreach (var swap in plan.Power?.Swaps ?? [])
            yield return new(swap, TimelineStep.SwapBattery, "Change the battery", "The pack in use is about empty by its derated energy; change it between two frames.");
        if (plan.Sequence is not { } sequence) yield break;
        yield return new(sequence.Span.Start, TimelineStep.Start, "First frame", Frames(sequence));
        yield return new(sequence.Span.End, TimelineStep.LastFrame, "Last frame closes", LastFrameWhy(night, plan.Run));
    }

    private static string Frames(Sequence sequence) =>
        $"{sequence.Shots} frames of {Said.Number(sequence.ExposureS)} s every {Said.Number(sequence.IntervalS)} s "
        + $"play for {Said.Number(sequence.PlaybackS)} s at {Said.Number(sequence.PlaybackFps)} frames a second.";

    private static string LastFrameWhy(NightEvidence night, Run run)
    {
        var end = run.Span.End;
        if (night.Sky.SubjectWindows.Any(window => window.End == end)) return "The subject sinks out of its window here.";
        if (night.Candidates.Any(window => window.End == end)) return "The sky pales after this.";
        return "The conditions of the run end here.";
    }

    private static IEnumerable<TimelineEntry> After(NightEvidence night, ShootingPlan plan)
    {
        var frames = plan.Sequence?.Span ?? plan.Run.Span;
        var awake = HoursAwake(night, plan);
        var why = awake >= Fatigue.CautionHours
            ? $"You will have been awake about {Said.Number(awake)} h. {Fatigue.Caution}"
            : $"You will have been awake about {Said.Number(awake)} h; sleep first if you are tired.";
        yield return new(LeaveTimes.DriveHomeAt(frames, night.Watch.Outing), TimelineStep.DriveHome, "Drive home, or sleep first", why);
    }

    private static double HoursAwake(NightEvidence night, ShootingPlan plan) =>
        Fatigue.HoursAwake(night.Watch, night.Inputs.Night, LeaveTimes.DriveHomeAt(plan.Sequence?.Span ?? plan.Run.Span, night.Watch.Outing));
}
