using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.Road;

/// <summary>When to be where before the first frame.</summary>
/// <param name="LeaveHome">The car leaves.</param>
/// <param name="Arrive">At the car park: set-up begins.</param>
/// <param name="SetUpDone">Rail levelled, framed.</param>
/// <param name="FocusAndTest">Focus on a star and test frames; needs stars, so not before nautical dusk where the run allows.</param>
/// <param name="Latest">Leaving later than this, set-up would not be done before the run.</param>
/// <param name="InDaylight">Set-up ends before sunset.</param>
internal readonly record struct LeaveTimes(
    Instant LeaveHome, Instant Arrive, Instant SetUpDone, Instant FocusAndTest, Instant Latest, bool InDaylight)
{
    /// <summary>
    /// Focus on a star, test frames at high ISO and short exposure, one frame at the planned exposure (common practice, no source).
    /// </summary>
    public static readonly Duration Testing = Duration.FromMinutes(15);

    /// <summary>
    /// Arriving so much before sunset plus the set-up leaves light to find the way back to the car (common practice, no source).
    /// </summary>
    private static readonly Duration DaylightMargin = Duration.FromMinutes(15);

    /// <summary>A longer wait than this at the site is not worth the daylight (engineering choice).</summary>
    private static readonly Duration LongestWait = Duration.FromHours(6);

    /// <summary>Taking the rig down and walking to the car, as a share of setting it up (engineering choice).</summary>
    private const double TakeDownShare = 0.5;

    /// <summary>When the rig is down and the drive home may begin.</summary>
    public static Instant DriveHomeAt(Interval frames, Outing outing) => frames.End + Duration.FromMinutes(outing.SetUpMin * TakeDownShare);

    /// <summary>Works back from the first frame.</summary>
    public static LeaveTimes For(Interval run, NightSky sky, Outing outing)
    {
        var drive = Duration.FromMinutes(outing.DriveMin);
        var setUp = Duration.FromMinutes(outing.SetUpMin);
        var latestArrival = run.Start - Testing - setUp;
        var arrive = latestArrival;
        if (
            sky.Sun.Set is { } sunset
            && run.Start - (sunset - setUp - DaylightMargin) is var wait
            && wait > Duration.Zero
            && wait <= LongestWait)
            arrive = Instant.Min(arrive, sunset - setUp - DaylightMargin);
        // Stars to focus on are there from nautical dusk.
        var test = Instant.Max(arrive + setUp, Instant.Min(run.Start - Testing, sky.Sun.NauticalDusk ?? run.Start - Testing));
        var done = arrive + setUp;
        return new LeaveTimes(arrive - drive, arrive, done, test, latestArrival - drive, sky.Sun.Set is { } set && done <= set);
    }
}
