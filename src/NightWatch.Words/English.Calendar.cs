using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words;

// Calendar entries.
public sealed partial class English
{
    /// <inheritdoc/>
    public string EntryCancelled => "Stood down.";

    /// <inheritdoc/>
    public string EntryTitle(VerdictClass? verdict, string site, Interval? run, Speech speech)
    {
        var title = $"{(verdict is { } known ? Of(known) : StoodDown)}: {site}";
        return run is { } window ? $"{title}, shoot {speech.Clock.ShortSpan(window)}" : title;
    }

    /// <inheritdoc/>
    public string LastCall(Duration before, Speech speech) => $"Last call: leave in {speech.Clock.Length(before)}";

    /// <inheritdoc/>
    public IReadOnlyList<string> EntrySays(Instant leaveBy, Interval? run, double? chance, Instant? toldAt, Speech speech)
    {
        string?[] says =
        [
            $"Leave by {speech.Clock.WithOffset(leaveBy)}.",
            run is { } window ? $"Shooting window {speech.Clock.Span(window)}." : null,
            chance is { } told ? $"{LikelyUsable(told, speech)}, as told {(toldAt is { } at ? speech.Clock.Full(at) : "last")}." : null,
            "The letters have the whole timeline.",
        ];
        return [.. says.OfType<string>()];
    }

    /// <inheritdoc/>
    public string DarkNights(string place) => $"Dark nights, {place}";

    /// <inheritdoc/>
    public string BestRun(string place, NightSpell run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return string.Create(
            Culture, $"Best dark run: {place}, {run.Count} {(run.Count == 1 ? "night" : "nights")}, {run.Usable.TotalHours:0.#} h");
    }

    /// <inheritdoc/>
    public string DarkNight(string place, Interval window, Speech speech) => $"Dark: {place}, {speech.Clock.ShortSpan(window)}";

    /// <inheritdoc/>
    public string DarkNightSays(Interval window, double moonLit, Speech speech) =>
        $"{Window(window, speech)}. Moon {speech.Percent(moonLit)} lit, below the horizon. Computed from the sky alone: look at the " +
        "weather.";
}
