using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>Why a night has no dark subject time at all.</summary>
internal static class MissingSky
{
    /// <summary>One or two stops that name what is missing.</summary>
    public static IReadOnlyList<Reason> Reasons(NightEvidence night)
    {
        var reasons = new List<Reason>();
        if (night.Sky.AstronomicalNight.Count == 0) reasons.Add(NoDarkness(night));
        if (night.Sky.SubjectWindows.Count == 0) reasons.Add(TooLow(night));
        if (reasons.Count == 0) reasons.Add(NeverTogether(night));
        return reasons;
    }

    private static NeverDark NoDarkness(NightEvidence night)
    {
        var lowest = 0;
        for (var cell = 1; cell < night.Grid.Count; cell++)
        {
            if (night.Above.Steps[cell].SunAltitudeDeg < night.Above.Steps[lowest].SunAltitudeDeg) lowest = cell;
        }

        var altitude = night.Above.Steps[lowest].SunAltitudeDeg;
        return new NeverDark(altitude, night.Grid.At(lowest), -18);
    }

    private static SubjectTooLow TooLow(NightEvidence night) =>
        new(night.Watch.Subject, night.Sky.Subject.TransitAltitudeDeg, night.Limits.MinAltitudeDeg);

    private static NeverUpInTheDark NeverTogether(NightEvidence night) => new(
        night.Watch.Subject, night.Sky.SubjectWindows[0], night.Sky.AstronomicalNight[0], night.Limits.MinAltitudeDeg,
        night.Limits.StartMarginMin + night.Limits.EndMarginMin, night.Limits.UsableRunMin)
    { Mend = new Mend.OtherDate() };
}
