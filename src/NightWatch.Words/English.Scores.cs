using NightWatch.Planning.Verification.Expenses;
using NodaTime;

namespace NightWatch.Words;

// Scores of the record, of replays, archives, simulated years and rehearsals, on a terminal.
public sealed partial class English
{
    /// <inheritdoc/>
    public string AheadCell(int leadNights) => leadNights == 0 ? "the day" : Many(leadNights, "night");

    /// <inheritdoc/>
    public string ScoresHeading(
        IReadOnlyList<string> watches, (LocalDate From, LocalDate To)? span, int nights, int known,
        IReadOnlyDictionary<string, int> sources, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sources);
        var names = string.Join(", ", watches);
        if (span is not var (from, to)) return $"{names}: nothing is recorded yet.";
        var by = sources.Count == 0 ? "" : $" (by {string.Join(", ", sources.Select(source => $"{source.Key} {source.Value}"))})";
        return $"{names}: {FromTo(speech.Clock.Date(from), speech.Clock.Date(to))}, {Many(nights, "night")} put to the test, {known} with "
            + $"a known outcome{by}.";
    }

    /// <inheritdoc/>
    public string TooFewToScore(int leadNights, int nights, int needed) =>
        $"{AheadCell(leadNights)}: {Many(nights, "night is", "nights are")} not enough evidence to score probabilities; "
        + $"{needed} are needed.";

    /// <inheritdoc/>
    public string LearntLine(string? feedId, int leadNights, int? version, string why)
    {
        var of = feedId is null ? "" : $" of {feedId}";
        return version is { } made
            ? $"Learnt{of}, {AheadCell(leadNights)}, version {made}: {why}"
            : $"Learnt{of}, {AheadCell(leadNights)}: {why}";
    }

    /// <inheritdoc/>
    public string ReplayHeading(int watches, int nights, int looks, int same, TimeSpan took) => string.Create(
        Culture,
        $"{Many(watches, "watch", "watches")}, {Many(nights, "night")}, {Many(looks, "look")} made again in {took.TotalSeconds:0.0} s: "
        + $"{same} {Come(same)} out the same, {looks - same} {(looks - same == 1 ? "does" : "do")} not.");

    /// <inheritdoc/>
    public string LooksLost(int looks) =>
        $"{Many(looks, "look")} cannot be made again: {(looks == 1 ? "its forecast is" : "their forecasts are")} not kept any more. "
        + "Database:KeepReplayDays keeps them.";

    /// <inheritdoc/>
    public string NightsTurned(int nights, int shown) =>
        $"Nights on which the last word is another: {nights}{(nights > shown ? $", the first {shown} of them" : "")}";

    /// <inheritdoc/>
    public string LooksThatDiffer(int? shown) =>
        shown is { } nights ? $"Looks that come out different, of the first {nights} nights" : "Looks that come out different";

    /// <inheritdoc/>
    public string LastWord(bool isOn) => isOn ? "on" : "off or nothing";

    /// <inheritdoc/>
    public string ArchiveHeading(string place, int nights, LocalDate from, LocalDate to, TimeSpan took) =>
        string.Create(Culture, $"{place}, {Many(nights, "night")} from {from:R} to {to:R}, in {took.TotalSeconds:0} s.");

    /// <inheritdoc/>
    public string Of(ArchiveRemark remark, int count) => remark switch
    {
        ArchiveRemark.SkyAlone => $"{Many(count, "night")} listed and not scored: the sky or the kit alone decides.",
        ArchiveRemark.CloudUnknown =>
            $"{Many(count, "night")} listed and not scored: the cloud that came is not known for every hour of the dark.",
        ArchiveRemark.NoRun => $"{Many(count, "look")} not scored: the archive holds no run of the day before.",
        ArchiveRemark.RainUnknown =>
            $"{Many(count, "night")} scored although rain of the dark hours is not known: it takes nothing from them.",
        ArchiveRemark.WindUnknown =>
            $"{Many(count, "night")} scored although wind of the dark hours is not known: it takes nothing from them.",
        _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Accepted: one of the remarks."),
    };

    /// <inheritdoc/>
    public string Of(LetterScores letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        return $"Letters, by every pass from the third evening before: {letters.Sent} sent, {letters.Flips} of them reversals; "
            + $"{Many(letters.ToldOnFailedUnwarned, "night")} told on that failed unwarned, "
            + $"{Many(letters.UsableNeverTold, "usable night")} never told.";
    }

    /// <inheritdoc/>
    public string YearsHeading(string climate, int sites, int years, LocalDate from, int every, long seed, TimeSpan took, Speech speech) =>
        string.Create(
            Culture,
            $"Invented weather, {climate}: {Many(sites, "site")}, {Many(years, "year")} from {speech.Clock.Date(from)}, "
                + $"{(every == 1 ? "every night" : $"one night in {every}")}, seed {seed}, in {took.TotalSeconds:0} s.");

    /// <inheritdoc/>
    public string YearsNights(int nights, int usable) =>
        $"{Many(nights, "night")} that the sky allows (dark, the subject up, long enough): {usable} came usable.";

    /// <inheritdoc/>
    public string YearsAssumptions(int members) =>
        "Climate and persistence are those of one station's typical year, errors by lead those of one feed in one place: this tests the " +
        "program, and says nothing of your feed and your place. Over what distance weather decorrelates is unproven. "
        + (members > 0
            ? $"The {Many(members, "member")} scatter about the run by 0.7 of its own error: what their spread tells is an assumption."
            : "No ensemble: the newest run and those before it.");

    /// <inheritdoc/>
    public string RehearsalDay(int day, int days, LocalDate today, int letters, Speech speech) =>
        string.Create(Culture, $"day {day,3} of {days}, {speech.Clock.Date(today)}, {Many(letters, "letter")}");

    /// <inheritdoc/>
    public string RehearsalHeading(int days, int nights, int letters, long seed, TimeSpan took) => string.Create(
        Culture,
        $"{Many(days, "day")}, {Many(nights, "site-night")}, {Many(letters, "letter")}, seed {seed}, in {took.TotalSeconds:0.0} s.");

    /// <inheritdoc/>
    public string RehearsalIntroduction(int days, LocalDate first, long seed, int letters, string reader, Speech speech) =>
        $"{Many(days, "day")} from {speech.Clock.Date(first)}, three sites, invented weather from seed {seed}. "
        + $"{Many(letters, "letter")} to {reader}, who does not exist. The code that wrote them is the service's own.";

    /// <inheritdoc/>
    public string WarnedAt(Instant at, string subjectLine, Speech speech) => $"Warned at {speech.Clock.Full(at)}: {subjectLine}";

    /// <inheritdoc/>
    public string AlternativeHeld((string Site, LocalDate Evening)? alternative, Speech speech) => alternative is var (site, evening)
        ? $"Its alternative, {site} on {speech.Clock.Date(evening)}, was on."
        : "No reschedule warning named an alternative that was then on.";

    /// <inheritdoc/>
    public string QuietWeek((LocalDate First, LocalDate Last)? week, Speech speech) => week is var (first, last)
        ? $"Quiet around full Moon: no letter from {speech.Clock.Date(first)} to {speech.Clock.Date(last)}."
        : "No quiet week around full Moon.";

    /// <inheritdoc/>
    public string MoonOfNight(double fraction) => $"Moon {MoonLit(fraction)}";

    /// <inheritdoc/>
    public string LookedAt(Instant at, int daysBefore, Speech speech) => daysBefore > 0 ? $"{daysBefore} d before" : speech.Clock.Time(at);

    /// <inheritdoc/>
    public string OutcomeKept(LocalDate evening, string site, string outcome) =>
        $"The night of {evening:R} at {site} is kept as {outcome}.";

    /// <inheritdoc/>
    public string Tries(int attempts, int ambiguous) => $"{attempts}, {ambiguous} of them ambiguous";

    private static string Come(int count) => count == 1 ? "comes" : "come";
}
