using NightWatch.Planning.Judging;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Verdicts;

/// <summary>Why a night has no dark subject time at all.</summary>
internal static class MissingSky
{
    /// <summary>One or two stops that name what is missing.</summary>
    public static IReadOnlyList<Reason> Reasons(NightEvidence night)
    {
        var reasons = new List<Reason>();
        if (night.Sky.AstronomicalNight.Count == 0) reasons.Add(NoDarkness(night));
        if (night.Sky.SubjectWindows.Count == 0) reasons.Add(SubjectTooLow(night));
        if (reasons.Count == 0) reasons.Add(NeverTogether(night));
        return reasons;
    }

    private static Reason NoDarkness(NightEvidence night)
    {
        var lowest = 0;
        for (var cell = 1; cell < night.Grid.Count; cell++)
        {
            if (night.Above.Steps[cell].SunAltitudeDeg < night.Above.Steps[lowest].SunAltitudeDeg) lowest = cell;
        }

        var altitude = night.Above.Steps[lowest].SunAltitudeDeg;
        return new Reason(
            Factor.Twilight, Severity.Stop, null, altitude, -18, Unit.Degrees,
            $"The night does not get dark: the Sun sinks only to {Said.OneDecimal(altitude)}° (around {Said.Clock(night.Grid.At(lowest), night.Zone)}); −18° is dark.",
            Source: "Astronomical twilight: Sun's centre at −18°");
    }

    private static Reason SubjectTooLow(NightEvidence night)
    {
        var highest = night.Sky.Subject.TransitAltitudeDeg;
        var limit = night.Limits.MinAltitudeDeg;
        var text = highest is { } altitude
            ? $"{Name(night.Watch.Subject)} does not clear the skyline and {Said.Number(limit)}°: it culminates at {Said.OneDecimal(altitude)}°."
            : $"{Name(night.Watch.Subject)} does not clear the skyline and {Said.Number(limit)}° this night.";
        return new Reason(Factor.Frame, Severity.Stop, null, highest, limit, Unit.Degrees, text);
    }

    private static Reason NeverTogether(NightEvidence night)
    {
        var dark = night.Sky.AstronomicalNight[0];
        var up = night.Sky.SubjectWindows[0];
        var margins = night.Limits.StartMarginMin + night.Limits.EndMarginMin;
        var text = $"{Name(night.Watch.Subject)} is above {Said.Number(night.Limits.MinAltitudeDeg)}° only {Said.Span(up, night.Zone)}, "
            + $"the sky is dark {Said.Span(dark, night.Zone)}"
            + (margins > 0 ? $" less the watch's margins of {Said.Number(margins)} min." : ".");
        return new Reason(
            Factor.Frame, Severity.Stop, null, 0, night.Limits.UsableRunMin, Unit.Minutes, text, "A date on which the subject is up in the dark.");
    }

    private static string Name(Subject subject) => subject switch
    {
        Subject.GalacticCore => "The galactic core",
        Subject.GalacticBand band => $"The galactic band at longitude {Said.Number(band.LongitudeDeg)}°",
        Subject.FixedPoint point => point.Name,
        _ => "The sky",
    };
}
