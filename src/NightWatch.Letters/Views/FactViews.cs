using System.Globalization;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Reasons;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>The blocks of names and figures.</summary>
internal static class FactViews
{
    /// <summary>Window, leave-by, chance.</summary>
    public static IReadOnlyList<FactView> KeyTimes(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return ToldTimes(night);
        var verdict = night.Plan.Verdict;
        List<FactView> facts = [];
        if (verdict.Run is { } run)
            facts.Add(new FactView(night.IsOff ? "Best stretch" : "Shooting window", $"{night.Clock.Span(run)}, {night.Clock.Length(run.Duration)}"));
        else if (night.IsOff)
            facts.Add(new FactView("Shooting window", "none"));
        if (!night.IsOff && night.Plan.LeaveBy is { } leaveBy) facts.Add(new FactView("Leave by", night.Clock.WithOffset(leaveBy)));
        facts.Add(new FactView("Chance", night.Speech.Likely(verdict.Probability)));
        facts.AddRange(Record(night));
        if (night.Plan.Watch.Site.AccessNotes is { Length: > 0 } access && !night.IsOff) facts.Add(new FactView("Getting there", PlainWords.OneLine(access)));
        return facts;
    }

    /// <summary>What came of calls like this one; nothing where they are too few to tell.</summary>
    private static IEnumerable<FactView> Record(NightContext night)
    {
        if (night.Like is not { } like) yield break;
        yield return new FactView("Record", night.Speech.Of(like)) { Links = night.Links.Record(night.Plan.Watch) is { } page ? [page] : [] };
    }

    /// <summary>Cloud, dew and Moon for the shooting window; after the night, as they were told.</summary>
    public static IReadOnlyList<FactView> Summaries(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief)
            return [Told(night, "Cloud", Factor.Cloud), Told(night, "Dew", Factor.Dew), Told(night, "Moon", Factor.Moon)];
        var summary = night.Plan.Summary;
        return
        [
            new FactView("Cloud", night.Speech.Cloud(summary)),
            new FactView("Dew", night.Speech.Dew(summary)),
            new FactView("Moon", night.Speech.Moon(summary)),
        ];
    }

    /// <summary>The frames.</summary>
    public static IReadOnlyList<FactView> Sequence(NightContext night)
    {
        if (night.IsOff || night.Kind == LetterKind.Debrief || night.Plan.Sequence is not { } s) return [];
        return
        [
            new FactView("Frames", Say($"{s.Shots} of {s.ExposureS:0.#} s, one every {s.IntervalS:0.#} s, ISO {s.Iso}")),
            new FactView("From, to", $"{night.Clock.Span(s.Span)}"),
            new FactView("Plays for", Say($"{s.PlaybackS:0.#} s at {s.PlaybackFps:0.#} frames a second")),
            new FactView("Star trails", Say($"{s.TrailPixels:0.#} px; longest exposure {s.TrailLimitS:0.#} s by the sidereal rate, {s.CommonPracticeLimitS:0} s by 600 / focal length (common practice)")),
            new FactView("On the cards", Say($"{s.StorageGb:0.#} GB")),
        ];
    }

    /// <summary>Where the forecast comes from, its age, and what must stand beside it.</summary>
    public static IReadOnlyList<FactView> Source(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return [.. Attributions(night)];
        if (night.Plan.Forecast is not { } origin) return [new FactView("Forecast", "None could be fetched; the weather is unknown.")];
        var issued = origin.IssuedAt is { } at ? $"issued {night.Clock.Full(at)}, " : "";
        var age = night.Clock.Length(origin.Age(night.Now));
        return [new FactView("Forecast", $"{issued}fetched {night.Clock.Full(origin.RetrievedAt)}; {age} old when this was written."), .. Attributions(night)];
    }

    /// <summary>One line a source, whatever part of the figures it gave. The licences want changes told.</summary>
    private static IEnumerable<FactView> Attributions(NightContext night) => new[] { night.Plan.Forecast }.Concat(night.Plan.OtherForecasts)
        .OfType<ForecastOrigin>()
        .Select(origin => origin.Attribution)
        .Distinct()
        .Select(data => new FactView("Data", $"{data.Text} ({data.Licence}), combined and interpolated here")
        {
            Links = data.LicenceLink is { } licence ? [data.Link, licence] : [data.Link],
        });

    private static List<FactView> ToldTimes(NightContext night)
    {
        List<FactView> facts = [];
        if (night.Before.ToldRun is { } run) facts.Add(new FactView("Told window", $"{night.Clock.Span(run)}, {night.Clock.Length(run.Duration)}"));
        if (night.Before.ToldProbability is { } chance) facts.Add(new FactView("Told chance", $"{night.Speech.Percent(chance)} likely to be usable"));
        return facts;
    }

    private static FactView Told(NightContext night, string name, Factor factor) =>
        night.Before.Figures.FirstOrDefault(f => f.Factor == factor) is { } figure
            ? new FactView(name, $"told as {night.Units.Figure(figure.Value, figure.Unit)}{What(factor)} ({night.Speech.Of(figure.Severity)}).")
            : new FactView(name, "no figure was told.");

    private static string What(Factor factor) => factor switch
    {
        Factor.Cloud => " in the mean",
        Factor.Dew => " between lens and dew point",
        Factor.Moon => " added to the sky",
        _ => "",
    };

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
