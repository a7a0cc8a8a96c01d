using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Judging;
using NightWatch.Planning.Nights;
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
    public string NightChart(LocalDate evening, Verdict verdict, NightSummary summary, Speech s)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var window = verdict.Run is not { } run ? "No dark time with the subject up."
            : verdict.Class == VerdictClass.NoGo ? $"Best stretch {s.Clock.Span(run)}, not good enough."
            : $"Shooting window {s.Clock.Span(run)}.";
        return $"Chart of the night {s.Clock.Night(evening)}. {window} Cloud: {Cloud(summary, s)} Dew: {Dew(summary, s)} Moon: {Moon(summary, s)}";
    }

    /// <inheritdoc/>
    public string OverBracket(Verdict verdict, Speech s)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return verdict.Run is not { } run ? "No dark time with the subject up"
            : verdict.Class == VerdictClass.NoGo ? $"Best {s.Clock.ShortSpan(run)}, not good enough"
            : $"Shoot {s.Clock.ShortSpan(run)} ({s.Clock.Length(run.Duration)})";
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
    public string Altitudes(Subject subject, double? mostDeg, bool moonIsUp, Speech s)
    {
        var up = mostDeg is { } top and > 0 ? $"{CurveName(subject)} up to {Degrees(top)}"
            : subject is Subject.Stars ? "No subject" : $"{CurveName(subject)} not up";
        return $"{up}, {(moonIsUp ? "Moon dashed" : "Moon down")}";
    }

    /// <inheritdoc/>
    public string CloudFigures(NightSummary summary, Speech s)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return summary.CloudMean is null && summary.CloudMost is null ? Unknown
            : $"{s.Units.Figure(summary.CloudMean, Unit.Fraction)} on average, {s.Units.Figure(summary.CloudMost, Unit.Fraction)} at most";
    }

    /// <inheritdoc/>
    public string LensFigures(NightSummary summary, Speech s)
    {
        ArgumentNullException.ThrowIfNull(summary);
        return summary.DewOnset is { } onset ? $"dew from {s.Clock.Time(onset)} without a heater"
            : summary.LeastDewMarginK is { } least ? $"at least {s.Units.Figure(least, Unit.Kelvin)} above dew point"
            : "dew unknown";
    }

    /// <inheritdoc/>
    public string SkyFigures(double? most, Speech s) => $"{s.Units.Figure(most, Unit.Fraction)} of full scale at most";

    /// <inheritdoc/>
    public string FrameChart(FramingPlan framing, Sequence sequence, Speech s)
    {
        ArgumentNullException.ThrowIfNull(framing);
        var first = framing.Path[0];
        var place = first is { Across: { } across, Up: { } up, IsIn: true } ? $"At the first frame it stands {FromCentre(across, up, s)}. " : "";
        return $"Path of the subject across the frame of {Degrees(framing.FieldAcrossDeg)} by {Degrees(framing.FieldUpDeg)}. {place}{InFrame(framing, sequence, s)}";
    }

    /// <inheritdoc/>
    public string Field(double focalLengthMm, FramingPlan framing, Speech s) =>
        $"{s.Number(focalLengthMm)} mm, {Degrees(framing.FieldAcrossDeg)} × {Degrees(framing.FieldUpDeg)}";

    /// <inheritdoc/>
    public string InFrame(FramingPlan framing, Sequence sequence, Speech s) =>
        framing.Enters is not { } enters ? "The subject is never in the frame."
        : framing.ShareIn >= 1 ? $"In the frame throughout, {s.Clock.Time(enters)} to {s.Clock.Time(sequence.Span.End)}."
        : $"In the frame {s.Clock.Time(enters)} to {s.Clock.Time(framing.Leaves ?? sequence.Span.End)}: {s.Percent(framing.ShareIn)} of {sequence.Shots} frames.";

    /// <inheritdoc/>
    public string Headings(FramingPlan framing, Speech s)
    {
        var (start, end) = (framing.Move.Start, framing.Move.End);
        var first = $"azimuth {Degrees(start.AzimuthDeg)}, altitude {Degrees(start.AltitudeDeg)}";
        return start == end ? $"The camera stands at {first}." : $"The camera goes from {first} to {Degrees(end.AzimuthDeg)}, {Degrees(end.AltitudeDeg)}.";
    }

    /// <inheritdoc/>
    public string Foreground(FramingPlan framing, Speech s) =>
        framing.ForegroundAtStart + framing.ForegroundAtEnd == 0 ? "No foreground in the frame."
        : framing.Move.Start == framing.Move.End ? $"Foreground, filled: {s.Percent(framing.ForegroundAtStart)} of the frame."
        : $"Foreground: {s.Percent(framing.ForegroundAtStart)} at the first frame (filled), {s.Percent(framing.ForegroundAtEnd)} at the last (dashed).";

    /// <inheritdoc/>
    public string AtFrame(FramePathPoint point, Sequence sequence, Speech s)
    {
        var place = point is { Across: { } across, Up: { } up } ? FromCentre(across, up, s) : "behind the camera";
        var camera = $"azimuth {s.OneDecimal(point.Camera.AzimuthDeg)}°, altitude {s.OneDecimal(point.Camera.AltitudeDeg)}°";
        return $"{s.Clock.Time(point.At)}, frame {point.Shot} of {sequence.Shots}: subject {place}, "
            + $"{(point.IsIn ? "in the frame" : "not in the frame")}; camera at {camera}.";
    }

    private static string FromCentre(double across, double up, Speech s) =>
        $"{s.Percent(Math.Abs(across))} {(across >= 0 ? "right" : "left")} and {s.Percent(Math.Abs(up))} {(up >= 0 ? "up" : "down")} of the centre";

    private string Degrees(double value) => value.ToString("0", Culture) + "°";
}
