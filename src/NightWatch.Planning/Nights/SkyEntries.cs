using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>What the sky does while it matters: from leaving home to being back; without a run from sunset to sunrise.</summary>
internal static class SkyEntries
{
    /// <summary>What comes so soon after the last frame explains why it is the last.</summary>
    private static readonly Duration AfterLastFrame = Duration.FromMinutes(15);

    public static IEnumerable<TimelineEntry> Of(NightEvidence night, ShootingPlan? plan)
    {
        if (plan is null)
        {
            var dark =
                night.Sky.Sun is { Set: { } set, Rise: { } rise } && set < rise
                    ? new Interval(set, rise + Duration.Epsilon)
                    : night.Sky.Span;
            return All(night).Where(entry => dark.Contains(entry.At));
        }

        // Light matters on the road home too; Moon and subject only while the frames run.
        var outing = new Interval(plan.Leave.LeaveHome, plan.Home);
        var shooting = new Interval(outing.Start, (plan.Sequence?.Span.End ?? plan.Run.Span.End) + AfterLastFrame);
        return Sun(night.Sky.Sun)
            .Where(entry => outing.Contains(entry.At))
            .Concat(Moon(night.Sky.Moon).Concat(Subject(night)).Where(entry => shooting.Contains(entry.At)));
    }

    private static IEnumerable<TimelineEntry> All(NightEvidence night) =>
        Sun(night.Sky.Sun).Concat(Moon(night.Sky.Moon)).Concat(Subject(night));

    private static IEnumerable<TimelineEntry> Sun(SunEvents sun)
    {
        (Instant? At, TimelineStep Step)[] events =
        [
            (sun.Set, TimelineStep.Sunset), (sun.CivilDusk, TimelineStep.CivilDusk), (sun.NauticalDusk, TimelineStep.NauticalDusk),
            (sun.AstronomicalDusk, TimelineStep.AstronomicalDusk), (sun.AstronomicalDawn, TimelineStep.AstronomicalDawn),
            (sun.NauticalDawn, TimelineStep.NauticalDawn), (sun.CivilDawn, TimelineStep.CivilDawn), (sun.Rise, TimelineStep.Sunrise),
        ];
        foreach (var (at, step) in events)
        {
            if (at is { } happens) yield return new TimelineEntry.Bare(happens, step);
        }
    }

    private static IEnumerable<TimelineEntry> Moon(MoonEvents moon) =>
        MoonTurn.Of(moon).Select(turn => new TimelineEntry.MoonTurns(turn.At, turn.Rises, moon.IlluminatedFraction));

    private static IEnumerable<TimelineEntry> Subject(NightEvidence night)
    {
        if (night.Watch.Subject is Subject.Stars) yield break;
        var span = night.Sky.Span;
        var limit = night.Limits.MinAltitudeDeg;
        foreach (var window in night.Sky.SubjectWindows)
        {
            if (window.Start > span.Start) yield return new TimelineEntry.SubjectLimit(window.Start, Clears: true, limit);
            if (window.End < span.End) yield return new TimelineEntry.SubjectLimit(window.End, Clears: false, limit);
        }

        if (night.Sky.Subject is { Transit: { } transit, TransitAltitudeDeg: { } altitude } && altitude > 0)
            yield return new TimelineEntry.SubjectHighest(transit, altitude);
    }
}
