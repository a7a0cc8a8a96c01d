using NightWatch.Planning.Camera;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Titles, legends and messages of the pictures.
public partial interface ILanguage
{
    /// <summary>The message of a night's chart, in sentences.</summary>
    string NightChart(LocalDate evening, Verdict verdict, NightSummary summary, Speech speech);

    /// <summary>Stands above the bracket of the shooting window.</summary>
    string OverBracket(Verdict verdict, Speech speech);

    /// <summary>There is nothing to draw.</summary>
    string NothingToDraw { get; }

    /// <summary>Title of the strip of altitudes.</summary>
    string AltitudeStrip { get; }

    /// <summary>Title of the strip of cloud.</summary>
    string CloudStrip { get; }

    /// <summary>Title of the strip of the lens above its dew point.</summary>
    string LensStrip { get; }

    /// <summary>Marks where dew begins.</summary>
    string DewMark { get; }

    /// <summary>Title of the strip of the sky's level in the frame.</summary>
    string SkyStrip { get; }

    /// <summary>Names the Moon's curve.</summary>
    string MoonCurve { get; }

    /// <summary>A subject's name beside its curve, at most sixteen letters.</summary>
    string CurveName(Subject subject);

    /// <summary>What the strip of altitudes shows.</summary>
    /// <param name="subject">Whose altitude.</param>
    /// <param name="mostDeg">Its greatest; null: unknown.</param>
    /// <param name="moonIsUp">The Moon's curve is there to see.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string Altitudes(Subject subject, double? mostDeg, bool moonIsUp, Speech speech);

    /// <summary>What the strip of cloud shows.</summary>
    string CloudFigures(NightSummary summary, Speech speech);

    /// <summary>What the strip of the lens shows.</summary>
    string LensFigures(NightSummary summary, Speech speech);

    /// <summary>What the strip of the sky's level shows.</summary>
    /// <param name="most">Share of full scale in the run; null: unknown.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string SkyFigures(double? most, Speech speech);

    /// <summary>Title of the picture of the subject's path.</summary>
    string FrameTitle { get; }

    /// <summary>The message of that picture, in sentences.</summary>
    string FrameChart(FramingPlan framing, Sequence sequence, Speech speech);

    /// <summary>Lens and field of view.</summary>
    string Field(double focalLengthMm, FramingPlan framing, Speech speech);

    /// <summary>When the subject is in the frame.</summary>
    string InFrame(FramingPlan framing, Sequence sequence, Speech speech);

    /// <summary>Where the camera points.</summary>
    string Headings(FramingPlan framing, Speech speech);

    /// <summary>How much of the frame the foreground takes.</summary>
    string Foreground(FramingPlan framing, Speech speech);

    /// <summary>Where the subject and the camera are at one frame.</summary>
    string AtFrame(FramePathPoint point, Sequence sequence, Speech speech);
}
