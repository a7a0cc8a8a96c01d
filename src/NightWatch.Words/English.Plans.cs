using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Words;

// A plan on a terminal.
public sealed partial class English
{
    /// <inheritdoc/>
    public string PlanHeading(string site, LocalDate evening, Verdict verdict, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return $"{Of(verdict.Class)} for {site}, night of {speech.Clock.Date(evening)}, {speech.Percent(verdict.Probability.Value)} "
            + $"({TradeWords.Of(verdict.Probability)})";
    }

    /// <inheritdoc/>
    public string Hazard(Caution caution, Speech speech) => $"HAZARD: {Of(caution, speech)}";

    /// <inheritdoc/>
    public string RunLine(Interval? run, Speech speech) => run is null ? "No run." : $"Run: {Window(run, speech)}.";

    /// <inheritdoc/>
    public string LeaveBy(Instant at, Speech speech) => $"Leave by: {speech.Clock.Full(at)}.";

    /// <inheritdoc/>
    public string Frames(Sequence sequence)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        var wished = sequence.WishedPlaybackS is { } wish ? string.Create(Culture, $" ({wish:0.#} s wished)") : "";
        return string.Create(
            Culture,
            $"{sequence.Shots} of {sequence.ExposureS:0.#} s every {sequence.IntervalS:0.#} s at ISO {sequence.Iso}, "
            + $"{sequence.PlaybackS:0.#} s of playback at {sequence.PlaybackFps:0.#} a second{wished}, {sequence.StorageGb:0.#} GB");
    }

    /// <inheritdoc/>
    public string Trails(Sequence sequence)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        var trails = string.Create(
            Culture,
            $"{sequence.TrailPixels:0.#} pixels at the centre, {sequence.TrailPixelsAtCorner:0.#} in the worst corner (fastest "
            + $"declination {sequence.FastestDeclinationDeg:0.#}°)");
        return trails + string.Create(
            Culture,
            $"; longest exposure {sequence.TrailLimitS:0.#} s, by 600 / focal length {sequence.CommonPracticeLimitS:0.#} s (common "
            + $"practice), by NPF {sequence.NpfSimpleS:0.#} s short and {sequence.NpfFullS:0.#} s full");
    }

    /// <inheritdoc/>
    public string Of(PathDome dome, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(dome);
        var apart = dome is { LeastApartDeg: { } least, NearestAt: { } at }
            ? $", {speech.Degrees(least)} from the subject at {speech.Clock.Time(at)}"
            : "";
        return string.Create(
            Culture, $"{dome.Town} {dome.DistanceKm:0} km at azimuth {dome.AzimuthDeg:0}°, {dome.BrighteningMag:0.0#} mag at 45°{apart}");
    }

    /// <inheritdoc/>
    public string LaterNight(LocalDate evening, bool isFree, Speech speech) =>
        isFree ? speech.Clock.Date(evening) : $"{speech.Clock.Date(evening)} (not a free evening)";

    /// <inheritdoc/>
    public string VerdictCell(VerdictClass verdict, double chance) => string.Create(Culture, $"{Within(verdict)}, {chance * 100:0} %");

    /// <inheritdoc/>
    public string RunCell(Interval? run, Speech speech) => run is { } span ? speech.Clock.Times(span) : "none";

    /// <inheritdoc/>
    public string FiguresFrom(IReadOnlyList<Factor> factors, string? source) =>
        $"{string.Join(", ", factors.Select(TradeWords.Of))}: {source}.";

    /// <inheritdoc/>
    public string ExposureFrom(Formula source) => $"exposure: {Of(source)}.";

    /// <inheritdoc/>
    public string WeatherFrom(Attribution attribution)
    {
        ArgumentNullException.ThrowIfNull(attribution);
        return $"weather: {attribution.Text} ({attribution.Licence}, {attribution.Link}), combined and interpolated here.";
    }

    /// <inheritdoc/>
    public string ForecastAge(ForecastOrigin forecast, Instant now, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        var issued = forecast.IssuedAt is { } at ? $"issued {speech.Clock.Full(at)}, " : "";
        return $"Forecast of {forecast.FeedId}: {issued}fetched {speech.Clock.Full(forecast.RetrievedAt)}, "
            + $"{speech.Clock.TableLength(forecast.Age(now))} old.";
    }
}
