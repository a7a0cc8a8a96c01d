using NightWatch.Planning.Camera;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Words;

// The blocks of names and figures.
public sealed partial class English
{
    /// <inheritdoc/>
    public string NoneFetched => "None could be fetched; the weather is unknown.";

    /// <inheritdoc/>
    public string NoFigureTold => "no figure was told.";

    /// <inheritdoc/>
    public string Of(FactName name) => name switch
    {
        FactName.BestStretch => "Best stretch",
        FactName.ShootingWindow => "Shooting window",
        FactName.LeaveBy => "Leave by",
        FactName.GettingThere => "Getting there",
        FactName.ToldWindow => "Told window",
        FactName.ToldChance => "Told chance",
        FactName.FromTo => "From, to",
        FactName.PlaysFor => "Plays for",
        FactName.StarTrails => "Star trails",
        FactName.OnTheCards => "On the cards",
        FactName.TestFrames => "Test frames",
        FactName.SkyInFrame => "Sky in the frame",
        FactName.DarkSky => "Dark sky",
        FactName.CardChange => "Card change",
        FactName.SunMoonSubject => "Sun, Moon, subject",
        FactName.WeatherAtATime => "Weather at a time",
        FactName.SkyBrightness => "Sky brightness",
        FactName.PathInFrame => "Path in the frame",
        _ => name.ToString(),
    };

    /// <inheritdoc/>
    public string Window(Interval run, Speech speech) => $"{speech.Clock.Span(run)}, {speech.Clock.Length(run.Duration)}";

    /// <inheritdoc/>
    public string LikelyUsable(double chance, Speech speech) => $"{speech.Percent(chance)} chance of a usable night";

    /// <inheritdoc/>
    public string Frames(Sequence sequence, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        return string.Create(
            speech.Language.Culture,
            $"{sequence.Shots} of {sequence.ExposureS:0.#} s, one every {sequence.IntervalS:0.#} s, ISO {sequence.Iso}");
    }

    /// <inheritdoc/>
    public string PlaysFor(Sequence sequence, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        return string.Create(speech.Language.Culture, $"{sequence.PlaybackS:0.#} s at {sequence.PlaybackFps:0.#} frames a second");
    }

    /// <inheritdoc/>
    public string StarTrails(Sequence sequence, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        return string.Create(
            speech.Language.Culture,
            $"{sequence.TrailPixels:0.#} px; longest exposure {sequence.TrailLimitS:0.#} s by the sidereal rate, " +
            $"{sequence.CommonPracticeLimitS:0} s by 600 / focal length (common practice)");
    }

    /// <inheritdoc/>
    public string HowOld(Instant? issued, Instant fetched, Duration age, Speech speech)
    {
        var told = $"fetched {speech.Clock.Full(fetched)}; {speech.Clock.Length(age)} old when this was written.";
        return issued is { } at ? $"issued {speech.Clock.Full(at)}, {told}" : told;
    }

    /// <inheritdoc/>
    public string DataFrom(string attribution, string licence) => $"{attribution} ({licence}), combined and interpolated here";

    /// <inheritdoc/>
    public string ToldFigure(Factor factor, double? value, Unit unit, Severity severity, Speech speech)
    {
        var figure = speech.Units.Figure(value, unit);
        var what = factor switch
        {
            Factor.Cloud => $"{figure} in the mean",
            Factor.Dew => $"{figure} between lens and dew point",
            Factor.Moon => $"{figure} added to the sky",
            _ => figure,
        };
        return $"told as {what} ({Of(severity)}).";
    }

    /// <inheritdoc/>
    public string ChoiceFigures(NightPlan plan, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Listed(
            Likely(plan, speech),
            plan.Verdict.Run is { } run ? $"window {speech.Clock.ShortSpan(run)}" : null,
            LeaveBy(plan, speech),
            CloudIn(plan, speech),
            OnceDone(plan.Verdict, speech));
    }

    /// <summary>In a list of nights: what keeps one from being a go and can be done; null: nothing.</summary>
    private string? OnceDone(Verdict verdict, Speech speech) =>
        verdict.HoldsOnceDone ? $"a go once this is done: {Phrases(verdict.Needs.Select(need => need.Mend), speech)}" : null;

    private static string Likely(NightPlan plan, Speech speech) => $"{speech.Percent(plan.Verdict.Probability.Value)} chance";

    private static string? LeaveBy(NightPlan plan, Speech speech) => plan.LeaveBy is { } at ? $"leave by {speech.Clock.Full(at)}" : null;

    private static string CloudIn(NightPlan plan, Speech speech) => $"cloud {speech.Units.Figure(plan.Summary.CloudMean, Unit.Fraction)}";

    private static string Listed(params string?[] parts) => string.Join("; ", parts.Where(part => part is not null)) + ".";
}
