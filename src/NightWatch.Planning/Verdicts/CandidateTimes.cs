using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>When the sky allows a run at all: dark by the Sun, less the watch's margins, with the subject in its window.</summary>
/// <remarks>
/// The Moon is not left out here. Its light at the subject is a factor of its own: a thin crescent low in the west takes nothing from a
/// core in the south.
/// </remarks>
internal static class CandidateTimes
{
    /// <summary>In order, none empty.</summary>
    public static IReadOnlyList<Interval> Of(NightSky sky, Limits limits)
    {
        var dark = sky
            .AstronomicalNight.Select(night =>
                (
                    Start: night.Start + Duration.FromMinutes(limits.StartMarginMin),
                    End: night.End - Duration.FromMinutes(limits.EndMarginMin)))
            .Where(night => night.Start < night.End)
            .Select(night => new Interval(night.Start, night.End));
        return [.. dark.SelectMany(night => sky.SubjectWindows.Select(window => Common(night, window))).OfType<Interval>()];
    }

    private static Interval? Common(Interval a, Interval b)
    {
        var start = Instant.Max(a.Start, b.Start);
        var end = Instant.Min(a.End, b.End);
        return start < end ? new Interval(start, end) : null;
    }
}
