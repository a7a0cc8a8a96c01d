using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>
/// Looks a night up for a reader: the passes' own evaluation over what is kept. No feed is asked and nothing is written, so a page costs
/// milliseconds and a scanner that follows every link changes nothing.
/// </summary>
internal sealed class NightHandler(
    ToldNightStore told,
    OutcomeStore outcomes,
    PastNights past,
    ForecastSource handler,
    AlternativeFinder alternatives,
    SharedSky sky,
    RecordReader record,
    IClock clock)
{
    /// <summary>The night of a watch.</summary>
    public async Task<FoundNight> FindAsync(Watch watch, LocalDate night, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var memory = await told.GetAsync(watch.Id, night, stop);
        var track = await record.TrackAsync(watch, now, stop);
        // From its noon on it is over whatever the Sun does, and what is kept now need not be judged for that.
        if (now >= LocalClock.At(watch.Site.Zone, night.PlusDays(1), LocalTime.Noon)) return await OverAsync();
        var forecasts = handler.Read(stop);
        var plan = (await NightEvaluation.AskAsync(watch, night, forecasts, now, sky, memory.Night.Told)).Plan;
        var found = new FoundNight(plan, memory.Night, [], NightBasis.KeptAnswers, now) { Track = track };
        if (found.IsOver) return await OverAsync();
        return plan.Verdict.Class == VerdictClass.Go
            ? found
            : found with
            {
                Alternatives = await alternatives.InsteadOfAsync(plan, forecasts, stop),
            };

        async Task<FoundNight> OverAsync()
        {
            var (plan, basis) = await past.FindAsync(watch, night, stop);
            return new FoundNight(plan, memory.Night, [], basis, now) { Track = track, Said = await SaidAsync(watch, night, stop) };
        }
    }

    /// <summary>The subscriber wants no letters about the night.</summary>
    public async Task<bool> IsSnoozedAsync(Watch watch, LocalDate night, CancellationToken stop) =>
        (await told.GetAsync(watch.Id, night, stop)).Night.Snoozed;

    /// <summary>What the photographer said it was like; null: nothing yet.</summary>
    public async Task<NightOutcome?> SaidAsync(Watch watch, LocalDate night, CancellationToken stop) =>
        (await outcomes.OfNightAsync(watch.Id, night, stop)).FirstOrDefault(said => said.Source == OutcomeSource.Debrief)?.Outcome;
}
