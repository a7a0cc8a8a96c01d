using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Words;

// What letters and pages say of a night as a whole: subject, headline, what to do next, what changed.
public sealed partial class English
{
    /// <summary>More of another site's name would push the verdict out of a subject line.</summary>
    private const int MostOfOtherSite = 20;

    /// <inheritdoc/>
    public string VerdictName => "Verdict";

    /// <inheritdoc/>
    public string WindowName => "Window";

    /// <inheritdoc/>
    public string NoWindow => "none";

    /// <inheritdoc/>
    public string Name(SpokenNight night, NightNaming naming, Speech speech) => (naming, night.Ahead) switch
    {
        (NightNaming.UnderWay, _) => "this night",
        (_, 0) => "tonight",
        (_, 1) => "tomorrow night",
        (NightNaming.Counted, > 1) => $"in {night.Ahead} nights",
        _ => Dated(night, speech),
    };

    /// <inheritdoc/>
    public string Headline(NightNews news, SpokenNight night, NightNaming naming, Speech speech)
    {
        var name = Name(night, naming, speech);
        return news switch
        {
            NightNews.GoodComing => $"A good night is coming: {name}.",
            NightNews.FairComing => $"A night with a fair chance is coming: {name}.",
            NightNews.On => $"{Capital(name)} is on.",
            NightNews.MayWork => $"{Capital(name)} may work.",
            NightNews.OnAgain => $"{Capital(name)} is on again.",
            NightNews.Slipped => $"{Capital(name)} has slipped from go to marginal.",
            NightNews.Off => $"{Capital(name)} is off.",
            NightNews.StoodDown => $"Stood down: {Dated(night, speech)} is off.",
            NightNews.StoodDownAsWished => $"Stood down as you wished: {Dated(night, speech)}.",
            NightNews.SwitchedOn => $"Switched: {name} is on.",
            NightNews.SwitchedMayWork => $"Switched: {name} is in your calendar, and may work.",
            NightNews.Asked => $"What was {Dated(night, speech)} really like?",
            NightNews.LooksGood => $"{Capital(name)} looks good.",
            NightNews.LooksBad => $"{Capital(name)} looks bad.",
            _ => throw new ArgumentOutOfRangeException(nameof(news), news, "Accepted: one of the news."),
        };
    }

    /// <inheritdoc/>
    public string IsOver(SpokenNight night, VerdictClass? told, Speech speech) =>
        $"{Capital(Dated(night, speech))} is over; " + (told is { } verdict ? $"it was told as {Of(verdict)}." : "nothing was told of it.");

    /// <inheritdoc/>
    public SubjectWords SubjectLine(SubjectFacts facts, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var day = speech.Clock.Day(facts.Night.Evening);
        var window = facts.Run is { } run ? $", {speech.Clock.ShortSpan(run)}" : "";
        var leave = facts.LeaveBy is { } at ? $", leave {speech.Clock.Time(at)}" : "";
        var today = facts.Night.Ahead < 0 ? "tonight" : Name(facts.Night, NightNaming.Counted, speech);
        var deciding = facts.Deciding.Value is { } value
            ? $", {Within(facts.Deciding.Factor)} {speech.Units.Figure(value, facts.Deciding.Unit)}"
            : "";
        var verdict = Of(facts.Class);
        return facts.News switch
        {
            NightNews.GoodComing or NightNews.FairComing => new($"{verdict} {day}: ", [window, $", {speech.Percent(facts.Chance)} chance"]),
            NightNews.On or NightNews.MayWork => new($"{verdict} {today}, {day}: ", [leave, window]),
            NightNews.OnAgain => new($"ON AGAIN, GO {today}, {day}: ", [leave, window]),
            NightNews.Slipped => new($"CHANGED, {verdict} {today}, {day}: ", [leave, window]),
            NightNews.Off => new($"OFF {today}, {day}: ", [deciding, Instead(facts, "; instead", speech)]),
            NightNews.StoodDownAsWished => new(
                $"STAND DOWN {day}: ",
                [facts.PausedUntil is { } until ? $", paused until {speech.Clock.Day(until)}" : Instead(facts, ", switched to", speech)]),
            NightNews.SwitchedOn or NightNews.SwitchedMayWork => new($"SWITCHED, {verdict} {day}: ", [leave, window]),
            NightNews.Asked => new("How was ", [$" on {day}?"]),
            _ => new($"STAND DOWN {day}: ", [deciding, Instead(facts, "; instead", speech)]),
        };
    }

    /// <inheritdoc/>
    public string AndMore(int others) => $" (+{others} more)";

    /// <inheritdoc/>
    public string Of(SpokenChoice choice, SpokenNight from, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var day = choice.Evening == from.Evening ? Name(from, NightNaming.Counted, speech) : speech.Clock.Day(choice.Evening);
        var place = choice.Site is { } site ? $"at {site}" : "here";
        return choice.DriveKm is { } km ? $"{day} {place}, {speech.Units.Figure(km, Unit.Kilometres)} away" : $"{day} {place}";
    }

    /// <inheritdoc/>
    public string Heading(string site, SpokenNight night, Speech speech) => $"{site}, night of {speech.Clock.Night(night.Evening)}";

    /// <inheritdoc/>
    public string YouSwitched(SpokenChoice to, SpokenNight from, Speech speech) => $"You switched to {Of(to, from, speech)}.";

    /// <inheritdoc/>
    public string YouPaused(LocalDate until, Speech speech) => $"You paused this watch until {speech.Clock.Day(until)}.";

    /// <inheritdoc/>
    public string KeepFree(SpokenNight night, Instant? leaveBy, Speech speech)
    {
        var evening = $"Keep the evening of {speech.Clock.Day(night.Evening)} free";
        return leaveBy is { } at ? $"{evening}; leave by {speech.Clock.Full(at)}." : $"{evening}.";
    }

    /// <inheritdoc/>
    public string StayAtHome(Instant? toldLeaveBy, SpokenChoice? best, SpokenNight from, Speech speech)
    {
        var stay = toldLeaveBy is { } told ? $"Do not leave home (leave-by was {speech.Clock.Full(told)})." : "Stay at home.";
        return best is null ? $"{stay} No better night or place is in sight." : $"{stay} Best instead: {Of(best, from, speech)}.";
    }

    /// <inheritdoc/>
    public string DoNext(TimelineEntry? next, Instant? leaveBy, Speech speech)
    {
        if (next is null) return leaveBy is { } last ? $"Leave by {speech.Clock.Full(last)}." : "See the times below.";
        if (next.Step == TimelineStep.LeaveHome) return $"Leave home by {speech.Clock.Full(next.At)}.";
        var first = $"{Title(next)}, {speech.Clock.Full(next.At)}";
        return leaveBy is { } at ? $"{first}; leave by {speech.Clock.Full(at)}." : $"{first}.";
    }

    /// <inheritdoc/>
    public string OverHours(string what, Interval hours, Speech speech) => $"{what} {speech.Clock.ShortSpan(hours)}";

    /// <inheritdoc/>
    public string WithChance(VerdictClass verdict, double? chance, Speech speech) =>
        chance is { } value ? $"{Of(verdict)}, {speech.Percent(value)} chance of a usable night" : Of(verdict);

    /// <inheritdoc/>
    public string Worth(VerdictClass verdict, double chance, double goodMin, bool isEnough, Interval run, Speech speech)
    {
        var good = $"{speech.Clock.Length(Duration.FromMinutes(Math.Floor(goodMin)))} of good frames, {speech.Clock.ShortSpan(run)}";
        return isEnough
            ? $"{Of(verdict)}, {speech.Percent(chance)}: {good}."
            : $"{Of(verdict)}, {speech.Percent(chance)}, though the newest forecast alone gives only {good}.";
    }

    /// <inheritdoc/>
    public string OnceDone(IReadOnlyList<Mend> needs, SpokenNight night, NightNaming naming, Speech speech) =>
        $"A go once this is done ({Name(night, naming, speech)}): {Phrases(needs, speech)}.";

    /// <inheritdoc/>
    public (string Told, string Moon) NewScale(double drivesPerLostNight, bool hasPage)
    {
        var drives = drivesPerLostNight == 1 ? "one wasted drive" : string.Create(Culture, $"{drivesPerLostNight:0.##} wasted drives");
        var setting = hasPage ? "" : " (outing.drivesPerLostNight in the watch file)";
        return (
            "A night is now told by its chance of enough good frames and by what a good night missed is worth to you: "
                + $"{drives}, until you set it otherwise{setting}. What must be done first stands in the first line.",
            "The old limit on moonlight is gone: what counts is how dark the sky is at your subject, whether the Moon, towns or twilight " +
            "light it.");
    }

    /// <inheritdoc/>
    public string SetOnPage => "Set what a missed night is worth to you";

    private static string Dated(SpokenNight night, Speech speech) => $"the night of {speech.Clock.Night(night.Evening)}";

    private static string Instead(SubjectFacts facts, string joined, Speech speech) =>
        facts.Instead switch
        {
            null => "",
            { Site: { } site, Evening: var evening } when evening == facts.Night.Evening =>
                $"{joined} {PlainWords.Shortened(site, MostOfOtherSite)}",
            { Evening: var evening } => $"{joined} {speech.Clock.Day(evening)}",
        };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
