using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Titles, legends and messages of the pictures.
public sealed partial class English
{
    private const int LongestCurveName = 16;

    /// <inheritdoc/>
    public string NothingToDraw => "Nothing to draw for this night.";

    /// <inheritdoc/>
    public string AltitudeStrip => "Altitude";

    /// <inheritdoc/>
    public string CloudStrip => "Cloud";

    /// <inheritdoc/>
    public string LensStrip => "Lens";

    /// <inheritdoc/>
    public string DewMark => "dew";

    /// <inheritdoc/>
    public string SkyStrip => "Sky in frame";

    /// <inheritdoc/>
    public string MoonCurve => "Moon";

    /// <inheritdoc/>
    public string FrameTitle => "Subject in the frame";

    /// <inheritdoc/>
    public string NightChart(LocalDate evening, Verdict verdict, NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var window = verdict.Run is not { } run ? "No dark time with the subject up."
            : verdict.Class == VerdictClass.NoGo ? $"Best stretch {speech.Clock.Span(run)}, not good enough."
            : $"Shooting window {speech.Clock.Span(run)}.";
        return $"Chart of the night {speech.Clock.Night(evening)}. {window} Cloud: {Cloud(summary, speech)} Dew: {Dew(summary, speech)} " +
            $"Moon: {Moon(summary, speech)}";
    }

    /// <inheritdoc/>
    public string OverBracket(Verdict verdict, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return verdict.Run is not { } run ? "No dark time with the subject up"
            : verdict.Class == VerdictClass.NoGo ? $"Best {speech.Clock.ShortSpan(run)}, not good enough"
            : $"Shoot {speech.Clock.ShortSpan(run)} ({speech.Clock.Length(run.Duration)})";
    }

    /// <inheritdoc/>
    public string CurveName(Subject subject) => subject switch
    {
        Subject.GalacticCore => "Core",
        Subject.GalacticBand => "Band",
        Subject.FixedPoint point when point.Name.Length <= LongestCurveName => point.Name,
        _ => "Subject",
    };

    /// <inheritdoc/>
    public string Altitudes(Subject subject, double? mostDeg, bool moonIsUp, Speech speech)
    {
        var up = mostDeg is { } top and > 0 ? $"{CurveName(subject)} up to {Degrees(top)}"
            : subject is Subject.Stars ? "No subject" : $"{CurveName(subject)} not up";
        return $"{up}, {(moonIsUp ? "Moon dashed" : "Moon down")}";
    }

    /// <inheritdoc/>
    public string CloudFigures(NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return summary.CloudMean is null && summary.CloudMost is null ? Unknown
            : $"{speech.Units.Figure(summary.CloudMean, Unit.Fraction)} on average, " +
                $"{speech.Units.Figure(summary.CloudMost, Unit.Fraction)} at most";
    }

    /// <inheritdoc/>
    public string LensFigures(NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return summary.DewOnset is { } onset ? $"dew from {speech.Clock.Time(onset)} without a heater"
            : summary.LeastDewMarginK is { } least ? $"at least {speech.Units.Figure(least, Unit.Kelvin)} above dew point"
            : "dew unknown";
    }

    /// <inheritdoc/>
    public string SkyFigures(double? most, Speech speech) => $"{speech.Units.Figure(most, Unit.Fraction)} of full scale at most";

    /// <inheritdoc/>
    public string FrameChart(FramingPlan framing, Sequence sequence, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(framing);
        var first = framing.Path[0];
        var place = first is { Across: { } across, Up: { } up, IsIn: true }
            ? $"At the first frame it stands {FromCentre(across, up, speech)}. "
            : "";
        return $"Path of the subject across the frame of {Degrees(framing.FieldAcrossDeg)} by {Degrees(framing.FieldUpDeg)}. " +
            $"{place}{InFrame(framing, sequence, speech)}";
    }

    /// <inheritdoc/>
    public string Field(double focalLengthMm, FramingPlan framing, Speech speech) =>
        $"{speech.Number(focalLengthMm)} mm, {Degrees(framing.FieldAcrossDeg)} × {Degrees(framing.FieldUpDeg)}";

    /// <inheritdoc/>
    public string InFrame(FramingPlan framing, Sequence sequence, Speech speech) =>
        framing.Enters is not { } enters ? "The subject is never in the frame."
        : framing.ShareIn >= 1 ? $"In the frame throughout, {speech.Clock.Time(enters)} to {speech.Clock.Time(sequence.Span.End)}."
        : $"In the frame {speech.Clock.Time(enters)} to {speech.Clock.Time(framing.Leaves ?? sequence.Span.End)}: " +
            $"{speech.Percent(framing.ShareIn)} of {sequence.Shots} frames.";

    /// <inheritdoc/>
    public string Headings(FramingPlan framing, Speech speech)
    {
        var (start, end) = (framing.Move.Start, framing.Move.End);
        var first = $"azimuth {Degrees(start.AzimuthDeg)}, altitude {Degrees(start.AltitudeDeg)}";
        return start == end
            ? $"The camera stands at {first}."
            : $"The camera goes from {first} to {Degrees(end.AzimuthDeg)}, {Degrees(end.AltitudeDeg)}.";
    }

    /// <inheritdoc/>
    public string Foreground(FramingPlan framing, Speech speech) =>
        framing.ForegroundAtStart + framing.ForegroundAtEnd == 0
            ? framing.IsProgrammed || framing.ForegroundWished.Least <= 0
                ? "No foreground in the frame."
                : "The subject stands too high for any foreground."
            : framing.Move.Start == framing.Move.End
                ? $"Foreground, filled: {speech.Percent(framing.ForegroundAtStart)} of the frame."
                : $"Foreground: {speech.Percent(framing.ForegroundAtStart)} at the first frame (filled), " +
                    $"{speech.Percent(framing.ForegroundAtEnd)} at the last (dashed).";

    /// <inheritdoc/>
    public string AtFrame(FramePathPoint point, Sequence sequence, Speech speech)
    {
        var place = point is { Across: { } across, Up: { } up } ? FromCentre(across, up, speech) : "behind the camera";
        var camera = $"azimuth {speech.OneDecimal(point.Camera.AzimuthDeg)}°, altitude {speech.OneDecimal(point.Camera.AltitudeDeg)}°";
        return $"{speech.Clock.Time(point.At)}, frame {point.Shot} of {sequence.Shots}: subject {place}, "
            + $"{(point.IsIn ? "in the frame" : "not in the frame")}; camera at {camera}.";
    }

    private static string FromCentre(double across, double up, Speech speech) =>
        $"{speech.Percent(Math.Abs(across))} {(across >= 0 ? "right" : "left")} and {speech.Percent(Math.Abs(up))} " +
        $"{(up >= 0 ? "up" : "down")} of the centre";

    private string Degrees(double value) => value.ToString("0", Culture) + "°";
}
