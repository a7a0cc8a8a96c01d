using NightWatch.Planning.Judging;
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
            var dark = night.Sky.Sun is { Set: { } set, Rise: { } rise } && set < rise ? new Interval(set, rise + Duration.Epsilon) : night.Sky.Span;
            return All(night).Where(entry => dark.Contains(entry.At));
        }

        // Light matters on the road home too; Moon and subject only while the frames run.
        var outing = new Interval(plan.Leave.LeaveHome, plan.Home);
        var shooting = new Interval(outing.Start, (plan.Sequence?.Span.End ?? plan.Run.Span.End) + AfterLastFrame);
        return Sun(night.Sky.Sun).Where(entry => outing.Contains(entry.At)).Concat(Moon(night.Sky.Moon).Concat(Subject(night)).Where(entry => shooting.Contains(entry.At)));
    }

    private static IEnumerable<TimelineEntry> All(NightEvidence night) => Sun(night.Sky.Sun).Concat(Moon(night.Sky.Moon)).Concat(Subject(night));

    private static IEnumerable<TimelineEntry> Sun(SunEvents sun)
    {
        if (sun.Set is { } set) yield return new(set, TimelineStep.Sunset, "Sunset");
        if (sun.CivilDusk is { } civil) yield return new(civil, TimelineStep.CivilDusk, "Civil dusk", "The Sun is 6° down; brightest stars show.");
        if (sun.NauticalDusk is { } nautical) yield return new(nautical, TimelineStep.NauticalDusk, "Nautical dusk", "The Sun is 12° down; enough stars to focus on.");
        if (sun.AstronomicalDusk is { } dusk) yield return new(dusk, TimelineStep.AstronomicalDusk, "Astronomical dusk", "The Sun is 18° down; the sky is dark.");
        if (sun.AstronomicalDawn is { } dawn) yield return new(dawn, TimelineStep.AstronomicalDawn, "Astronomical dawn", "The Sun comes within 18° of the horizon; the sky begins to pale.");
        if (sun.NauticalDawn is { } nauticalDawn) yield return new(nauticalDawn, TimelineStep.NauticalDawn, "Nautical dawn");
        if (sun.CivilDawn is { } civilDawn) yield return new(civilDawn, TimelineStep.CivilDawn, "Civil dawn", "Light enough to see the way.");
        if (sun.Rise is { } rise) yield return new(rise, TimelineStep.Sunrise, "Sunrise");
    }

    private static IEnumerable<TimelineEntry> Moon(MoonEvents moon)
    {
        var lit = Said.Percent(moon.IlluminatedFraction);
        foreach (var at in moon.Rises) yield return new(at, TimelineStep.Moonrise, "Moonrise", $"The Moon is {lit} lit.");
        foreach (var at in moon.Sets) yield return new(at, TimelineStep.Moonset, "Moonset", $"The Moon is {lit} lit.");
    }

    private static IEnumerable<TimelineEntry> Subject(NightEvidence night)
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
}
