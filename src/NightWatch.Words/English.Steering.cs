using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Words;

// What came of a reader's wish about a watch or a night of theirs.
public sealed partial class English
{
    /// <inheritdoc/>
    public string SameNight => "Both nights are the same.";

    /// <inheritdoc/>
    public string NotOneSubscriber => "The two watches are not of one subscriber.";

    /// <inheritdoc/>
    public string NoDigest => "No weekly digest comes any more; the letters about single nights stay.";

    /// <inheritdoc/>
    public string NightUnreadable => "What is kept of the night cannot be read; whoever runs the service has been told.";

    /// <inheritdoc/>
    public string NightIsBusy => "The night is being looked at this very moment; try again in a minute.";

    /// <inheritdoc/>
    public string LettersAbout(LocalDate evening, string site, bool come, Speech speech) => come
        ? $"Letters about {NightWithin(evening, site, speech)} come again."
        : $"No letters about {NightWithin(evening, site, speech)}, unless it stands in your calendar and turns off.";

    /// <inheritdoc/>
    public string DayIsNotAhead(LocalDate day, Speech speech) =>
        $"{speech.Clock.Date(day)} is not ahead; a watch can rest until tomorrow or later.";

    /// <inheritdoc/>
    public string WatchRests(string watchId, LocalDate until, Speech speech) =>
        $"Watch {watchId} rests; it looks again on {speech.Clock.Date(until)}.";

    /// <inheritdoc/>
    public string Switched(LocalDate evening, string site, Instant leaveBy, Speech speech) =>
        $"Switched to {NightWithin(evening, site, speech)}: leave by {speech.Clock.ZonedTime(leaveBy)}.";

    /// <inheritdoc/>
    public string WatchIsPaused(string watchId) => $"Watch {watchId} is paused; take it up again first.";

    /// <inheritdoc/>
    public string IsOffByNow(NightPlan plan, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return $"{Capital(NightWithin(plan.Night, plan.Watch.Site.Name, speech))} is off by now: {speech.Whole(plan.Verdict.Deciding)}";
    }

    /// <inheritdoc/>
    public string TooLateFor(LocalDate evening, string site, Speech speech) =>
        $"It is too late to leave for {NightWithin(evening, site, speech)}.";

    /// <inheritdoc/>
    public string NightIsPast(LocalDate evening, Speech speech) => $"{speech.Clock.Date(evening)} is over.";

    /// <inheritdoc/>
    public string NoLettersFrom(string watchId) => $"No letters come from watch {watchId} any more.";

    private static string NightWithin(LocalDate evening, string site, Speech speech) =>
        $"the night of {speech.Clock.Date(evening)} at {site}";
}
