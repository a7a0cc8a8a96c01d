using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Watches, their places and the nights ahead of them.
public sealed partial class English
{
    /// <inheritdoc/>
    public string NoUsableNight => "no usable night";

    /// <inheritdoc/>
    public MarkedSentence WatchState(bool rests, LocalDate? until, Speech speech) =>
        new("It ", rests ? Rests(until, speech) : "looks every day", ".");

    /// <inheritdoc/>
    public string WatchStateCell(bool rests, LocalDate? until, Speech speech) =>
        !rests ? "on" : until is null ? "paused" : Rests(until, speech);

    /// <inheritdoc/>
    public string PlaceAndSubject(string coordinates, Subject subject) => $"{coordinates}; {Of(subject)}";

    /// <inheritdoc/>
    public string InShort(Verdict verdict, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        if (verdict.Run is not { } run || verdict.Deciding is { IsHazard: true, Severity: Severity.Stop })
            return speech.Whole(verdict.Deciding);
        var first = OnceDone(verdict, speech);
        return $"{speech.Percent(verdict.Probability.Value)} chance of a usable night, {speech.Clock.Times(run)}"
            + (first is null ? "" : $"; {first}");
    }

    /// <inheritdoc/>
    public string WithoutLetters(string said) => $"{said}; no letters";

    /// <inheritdoc/>
    public string NightsAhead(int count, int looked, Duration least, DarkNight best, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(best);
        return $"{count} of the next {looked} nights {(count == 1 ? "has" : "have")} a sky good for at least "
            + $"{speech.Clock.Length(least)}, "
            + $"the best on {speech.Clock.Day(best.Night)} with {speech.Clock.Length(best.LongestRun)}. The weather then decides.";
    }

    /// <inheritdoc/>
    public string NoNightAhead(int looked, Duration least, Speech speech) =>
        $"In the next {looked} nights the sky gives no {speech.Clock.Length(least)} of good frames here: the subject stays too low, or "
        + $"it does not get dark enough.";

    /// <inheritdoc/>
    public string OutOfSeason(DarkNight first, Duration least, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(first);
        return $"Out of season: the first night with at least {speech.Clock.Length(least)} of good frames is "
            + $"{speech.Clock.Day(first.Night)}. "
            + "Until then the subject is too low in the dark hours, or the sky too bright.";
    }

    /// <inheritdoc/>
    public string MoonLit(double fraction) => string.Create(Culture, $"{fraction * 100:0} % lit");

    /// <inheritdoc/>
    public string FieldsToMend(int count) => count == 1 ? "One field needs another look." : $"{count} fields need another look.";

    /// <inheritdoc/>
    public string SkyTaken((double Mag, double DarkestMag, double BrightestMag)? zenith) => zenith is var (mag, darkest, brightest)
        ? string.Create(Culture, $"Empty: {mag:0.0} is taken, estimated from the towns around; it may be {darkest:0.0} to {brightest:0.0}.")
        : "Empty: it is estimated.";

    /// <inheritdoc/>
    public string Town(string zoneId, long people, double latitudeDeg, double longitudeDeg)
    {
        ArgumentNullException.ThrowIfNull(zoneId);
        return $"{zoneId.Replace('_', ' ')}, {Count(people)} people, {From(latitudeDeg, "N", "S")} {From(longitudeDeg, "E", "W")}";

        string From(double value, string positive, string negative) =>
            string.Create(Culture, $"{Math.Abs(value):0.00}° {(value < 0 ? negative : positive)}");
    }

    /// <inheritdoc/>
    public string Skyline(IReadOnlyList<HorizonPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0) return "A level horizon.";
        var told = points.Select(point => string.Create(Culture, $"{point.AltitudeDeg:0.#}° at azimuth {point.AzimuthDeg:0.#}°"));
        return $"The skyline: {string.Join(", ", told)}.";
    }

    /// <inheritdoc/>
    public string WatchesAreEnough(int most, bool isSignedIn) =>
        $"An address may have {Many(most, "watch", "watches")}. {(isSignedIn ? "Delete one first." : "Sign in and delete one first.")}";

    /// <inheritdoc/>
    public string WhatIsUsable(Subject subject, Limits limits, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var levels = DarkLevels.Of(limits, subject);
        var up = subject is Subject.Stars ? "" : $", {Of(subject)} above {speech.Number(limits.MinAltitudeDeg)}° and the skyline";
        return $"Usable: at least {speech.Clock.Length(Duration.FromMinutes(limits.UsableRunMin))} of good frames with the Sun 18° below " +
            $"the horizon{up}. "
            + $"Towns and the Moon take from a frame where the sky is brighter than {speech.Number(levels.FullMag)} mag/arcsec², and all " +
                "of it where it is brighter than "
            + $"{speech.Number(levels.NothingMag)}. Computed from the sky alone; the weather is looked at when the night comes near.";
    }

    /// <inheritdoc/>
    public string Evenings(LocalDate from, LocalDate to, Speech speech) =>
        from == to ? speech.Clock.Day(from) : FromTo(speech.Clock.Day(from), speech.Clock.Day(to));

    /// <inheritdoc/>
    public MarkedSentence UsableHours(Duration usable, bool isBest) =>
        new("", string.Create(Culture, $"{usable.TotalHours:0.0}"), isBest ? " hours, among the best" : " hours");
}
