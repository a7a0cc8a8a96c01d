using NodaTime;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>What no single field can tell: fields that must agree with each other.</summary>
internal static class CrossChecks
{
    /// <summary>The faults of a watch whose fields are each within their range.</summary>
    public static IEnumerable<(string Field, string Message)> Of(Watch watch)
    {
        foreach (var (field, threshold) in Thresholds(watch.Limits))
        {
            if (threshold.Caution > threshold.Stop)
                yield return (
                    $"limits.{field}.caution",
                    $"{threshold.Caution:0.###} is above the stop, {threshold.Stop:0.###}; accepted: caution at or below stop.");
        }

        if (DarkLevels.Of(watch.Limits, watch.Subject) is var dark && dark.FullMag < dark.NothingMag)
        {
            yield return (
                watch.Limits.DarkFullMag is null ? "limits.darkNothingMag" : "limits.darkFullMag",
                $"darkFullMag, {dark.FullMag:0.##}, is a brighter sky than darkNothingMag, {dark.NothingMag:0.##}; accepted: " +
                "darkNothingMag at or below darkFullMag.");
        }

        if (watch.Outing.HomeLatitudeDeg is null != watch.Outing.HomeLongitudeDeg is null)
            yield return ("outing", "homeLatitudeDeg and homeLongitudeDeg belong together; accepted: both or neither.");
        if (watch.Move is { } move && move.EaseIn + move.EaseOut > 1)
            yield return ("move.easeOut", "easeIn and easeOut together are above 1; accepted: a sum of at most 1.");
        if (watch.Sequence is { ExposureS: { } exposure, IntervalS: { } interval } && interval < exposure)
            yield return (
                "sequence.intervalS",
                $"{interval:0.###} s is shorter than the exposure, {exposure:0.###} s; accepted: at least the exposure.");
        if (watch.Sequence.Foreground is var ground && ground.Least > ground.Most)
            yield return (
                "sequence.foreground.least",
                $"{ground.Least:0.###} is above the most, {ground.Most:0.###}; accepted: least at or below most.");
        foreach (var check in watch.Letters.SameDayChecks.Where(check => check <= watch.Letters.MorningAt))
            yield return (
                "letters.sameDayChecks",
                $"{check:HH':'mm} is not after morningAt, {watch.Letters.MorningAt:HH':'mm}; accepted: later times of the day.");
        foreach (var fault in QuietFaults(watch.Letters)) yield return fault;
    }

    // A look in the quiet hours finds its letters and may not send them; the day's outlook or timeline would never come.
    private static IEnumerable<(string Field, string Message)> QuietFaults(LetterSettings letters)
    {
        foreach (var (field, at) in new[] { ("morningAt", letters.MorningAt), ("eveningAt", letters.EveningAt) })
        {
            if (IsQuiet(letters, at))
                yield return (
                    $"letters.{field}",
                    $"{at:HH':'mm} is inside the quiet hours, {letters.QuietFrom:HH':'mm} to {letters.QuietUntil:HH':'mm}; accepted: a " +
                    "time outside them.");
        }
    }

    private static bool IsQuiet(LetterSettings letters, LocalTime at) => letters.QuietFrom <= letters.QuietUntil
        ? at >= letters.QuietFrom && at < letters.QuietUntil
        : at >= letters.QuietFrom || at < letters.QuietUntil;

    private static IEnumerable<(string Field, Threshold Threshold)> Thresholds(Limits limits) =>
    [
        ("cloud", limits.Cloud),
        ("precipitationProbability", limits.PrecipitationProbability),
        ("gustMps", limits.GustMps),
        ("fog", limits.Fog),
        ("thunder", limits.Thunder),
    ];
}
