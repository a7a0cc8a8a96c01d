using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>One watch and one night of the rehearsal.</summary>
/// <param name="Watch">The watch it is about.</param>
/// <param name="Night">The local date of the evening.</param>
/// <param name="Looks">Every evaluation, oldest first.</param>
/// <param name="Truth">The night with the weather that came.</param>
internal sealed record StoryNight(Watch Watch, LocalDate Night, IReadOnlyList<VerdictRecord> Looks, NightPlan Truth)
{
    /// <summary>The last look on the day: what the photographer would have gone by.</summary>
    public VerdictRecord? LastLook => Looks.Count > 0 ? Looks[^1] : null;
}

/// <summary>All that came of a rehearsal.</summary>
internal sealed record RehearsalStory(
    long Seed,
    int Days,
    IReadOnlyList<DiaryLetter> Letters,
    IReadOnlyList<StoryNight> Nights,
    IReadOnlyDictionary<string, OutboxEntry> Outbox)
{
    /// <summary>Moon more than this lit all night counts as full for the quiet week.</summary>
    private const double NearlyFull = 0.85;

    /// <summary>Letters of a kind.</summary>
    public IEnumerable<DiaryLetter> Of(LetterKind kind) => Letters.Where(letter => letter.Kind == kind);

    /// <summary>A night that a letter called go.</summary>
    public bool ToldGo(string watchId, LocalDate night, Instant after) =>
        Letters.Any(letter =>
            letter.At >= after
            && letter.Kind is LetterKind.MorningTimeline or LetterKind.RescheduleWarning
            && letter.Draft.Orders.Any(order =>
                order.Plan.Watch.Id == watchId && order.Plan.Night == night && order.Plan.Verdict.Class == VerdictClass.Go));

    /// <summary>
    /// Reschedule warnings that named an alternative which was then on: called go by a later letter or still go at the last look, and go
    /// with the weather that came.
    /// </summary>
    public IEnumerable<(DiaryLetter Warning, StoryNight Alternative)> AlternativesThatHeld() =>
        from warning in Of(LetterKind.RescheduleWarning)
        from alternative in warning.Draft.Alternatives.Values.SelectMany(list => list)
        let night = Nights.FirstOrDefault(night => night.Watch.Id == alternative.Plan.Watch.Id && night.Night == alternative.Plan.Night)
        where night?.LastLook?.Verdict.Class == VerdictClass.Go && night.Truth.Verdict.Class == VerdictClass.Go
        select (warning, night);

    /// <summary>
    /// The longest stretch of nights around a full Moon without a letter but debriefs; null when there is none of a week.
    /// </summary>
    public (LocalDate First, LocalDate Last)? QuietWeek()
    {
        var moon = Nights
            .GroupBy(night => night.Night)
            .ToDictionary(group => group.Key, group => group.First().Truth.Sky.Moon.IlluminatedFraction);
        var busy = Letters
            .Where(letter => letter.Kind != LetterKind.Debrief)
            .SelectMany(letter => letter.Draft.Orders.Select(order => letter.At.InZone(order.Plan.Watch.Site.Zone).Date))
            .ToHashSet();
        var stretches = new List<(LocalDate First, LocalDate Last)>();
        foreach (var day in moon.Keys.Order().Where(day => !busy.Contains(day)))
        {
            if (stretches.Count > 0 && stretches[^1].Last.PlusDays(1) == day) stretches[^1] = (stretches[^1].First, day);
            else stretches.Add((day, day));
        }

        return stretches
            .Where(stretch =>
                Period.DaysBetween(stretch.First, stretch.Last) >= 6
                && moon.Any(night => night.Key >= stretch.First && night.Key <= stretch.Last && night.Value > NearlyFull))
            .OrderByDescending(stretch => Period.DaysBetween(stretch.First, stretch.Last))
            .Select(stretch => ((LocalDate, LocalDate)?)stretch)
            .FirstOrDefault();
    }

    /// <summary>Nights by what was said last before leaving and what came.</summary>
    public int Count(VerdictClass said, VerdictClass came) =>
        Nights.Count(night => night.LastLook?.Verdict.Class == said && night.Truth.Verdict.Class == came);
}
