using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Watchkeeping.Steering;

/// <summary>
/// What a subscriber does about their own watches and nights, from a letter's link, the pages or the command line. Each wish is one
/// transaction over memory, calendar, letters and due rows; what it means for them is the policy's (<see cref="SubscriberWishes"/>).
/// </summary>
internal sealed class WatchSteering(
    WatchStore watches,
    ToldNightStore told,
    PassStore passes,
    ForecastSource forecastSource,
    SharedSky sky,
    SteeringLetters letters,
    IClock clock)
{
    /// <summary>A pass may change a memory between our read and our commit; then the wish is read and decided anew.</summary>
    private const int Tries = 5;

    /// <summary>
    /// No letters about the night, but for the one that takes it out of the calendar should it turn off. Ends with the night.
    /// </summary>
    public Task<SteeringOutcome> SnoozeNightAsync(string watchId, LocalDate night, CancellationToken stop = default) => OnNightAsync(
        watchId, night, SubscriberWishes.Snooze, hush: true, stop);

    /// <summary>Letters about the night again.</summary>
    public Task<SteeringOutcome> UnsnoozeNightAsync(string watchId, LocalDate night, CancellationToken stop = default) => OnNightAsync(
        watchId, night, SubscriberWishes.Unsnooze, hush: false, stop);

    /// <summary>
    /// The watch rests until a local date and then takes itself up again. Nights before it that stand in the calendar are stood down. A
    /// paused watch rests too: until then, no longer for good.
    /// </summary>
    public Task<SteeringOutcome> PauseUntilAsync(string watchId, LocalDate until, CancellationToken stop = default) => AgainAsync(
        async now =>
        {
            if (await watches.FindAsync(watchId, stop) is not { } watch) return new SteeringOutcome.NoSuchWatch(watchId);
            var today = now.InZone(watch.Site.Zone).Date;
            var speech = Speech.To(watch);
            if (until <= today) return new SteeringOutcome.Refused(speech.Language.DayIsNotAhead(until, speech));
            var forecasts = forecastSource.BeginPass(stop);
            var decisions = new List<Decided>();
            foreach (var memory in await told.FromAsync(watchId, today.PlusDays(-1), stop))
            {
                if (memory.Night.Night >= until || !(memory.Night.IsOn || memory.Night.OnCalendar)) continue;
                var plan = await PlanAsync(watch, memory.Night, forecasts, now);
                if (plan.Sky.Span.End <= now) continue;
                decisions.Add(new Decided(memory, plan, SubscriberWishes.StandDown(memory.Night, plan, now, new Wish.Paused(until))));
            }

            return await KeepAsync(
                decisions,
                new PassCommit
                {
                    Rest = new WatchRest(watchId, until),
                    Hush = [.. decisions.Where(d => d.Memory.Night.IsOn).Select(d => d.About)],
                },
                speech.Language.WatchRests(watchId, until, speech),
                now,
                stop);
        },
            stop);

    /// <summary>
    /// From one night to another of the same subscriber: the first is stood down and closed, the second is told on and comes into the
    /// calendar; its letters come as for any night that is on.
    /// </summary>
    public Task<SteeringOutcome> SwitchNightAsync(WatchNight from, WatchNight to, CancellationToken stop = default) =>
        AgainAsync(
            async now =>
            {
                if (await watches.FindAsync(from.WatchId, stop) is not { } left) return new SteeringOutcome.NoSuchWatch(from.WatchId);
                if (await watches.FindAsync(to.WatchId, stop) is not { } chosen) return new SteeringOutcome.NoSuchWatch(to.WatchId);
                var speech = Speech.To(chosen);
                var words = speech.Language;
                if (from == to) return new SteeringOutcome.Refused(words.SameNight);
                if (left.Subscriber.Key() != chosen.Subscriber.Key()) return new SteeringOutcome.Refused(words.NotOneSubscriber);
                if (chosen.IsPausedAt(now) || chosen.IsPausedOn(to.Night))
                    return new SteeringOutcome.Refused(words.WatchIsPaused(chosen.Id));
                var forecasts = forecastSource.BeginPass(stop);
                var (leftMemory, chosenMemory) = (
                    await told.GetAsync(left.Id, from.Night, stop), await told.GetAsync(chosen.Id, to.Night, stop));
                var (leftPlan, chosenPlan) = (
                    await PlanAsync(left, leftMemory.Night, forecasts, now), await PlanAsync(chosen, chosenMemory.Night, forecasts, now));
                if (WhyNot(chosenPlan, now) is { } why) return new SteeringOutcome.Refused(why);
                return await KeepAsync(
                    [
                        new Decided(
                            leftMemory,
                            leftPlan,
                            SubscriberWishes.StandDown(leftMemory.Night, leftPlan, now, new Wish.SwitchedTo(chosenPlan))),
                        new Decided(
                            chosenMemory,
                            chosenPlan,
                            SubscriberWishes.Choose(chosenMemory.Night, chosenPlan, now, new Wish.SwitchedFrom(leftPlan))),
                    ],
                    new PassCommit { Hush = leftMemory.Night.IsOn ? [from] : [] },
                    words.Switched(to.Night, chosen.Site.Name, chosenPlan.LeaveBy!.Value, speech),
                    now,
                    stop);
            },
            stop);

    /// <summary>
    /// No letters from this watch any more; unsent ones stay unsent. The watch is kept, paused, and can be taken up again.
    /// </summary>
    public async Task<SteeringOutcome> UnsubscribeAsync(string watchId, CancellationToken stop = default) =>
        await watches.PauseAsync(watchId, paused: true, clock.GetCurrentInstant(), stop)
            ? new SteeringOutcome.Done(Speech.ToAnybody.Language.NoLettersFrom(watchId))
            : new SteeringOutcome.NoSuchWatch(watchId);

    /// <summary>No weekly digest any more, of none of the watches of this one's subscriber; all other letters stay.</summary>
    public async Task<SteeringOutcome> StopDigestAsync(string watchId, CancellationToken stop = default)
    {
        if (await watches.FindAsync(watchId, stop) is not { } asked) return new SteeringOutcome.NoSuchWatch(watchId);
        await watches.StopDigestAsync(asked.Subscriber.Address, clock.GetCurrentInstant(), stop);
        return new SteeringOutcome.Done(Speech.To(asked).Language.NoDigest);
    }

    private static string? WhyNot(NightPlan plan, Instant now)
    {
        var speech = Speech.To(plan.Watch);
        if (plan.Verdict.Class == VerdictClass.NoGo) return speech.Language.IsOffByNow(plan, speech);
        return plan.LeaveBy is { } leaveBy && leaveBy > now ? null : speech.Language.TooLateFor(plan.Night, plan.Watch.Site.Name, speech);
    }

    private Task<SteeringOutcome> OnNightAsync(
        string watchId, LocalDate night, Func<ToldNight, ToldNight> wish, bool hush, CancellationToken stop) =>
        AgainAsync(
            async now =>
            {
                if (await watches.FindAsync(watchId, stop) is not { } watch) return new SteeringOutcome.NoSuchWatch(watchId);
                var speech = Speech.To(watch);
                if (night.PlusDays(1) < now.InZone(watch.Site.Zone).Date)
                    return new SteeringOutcome.Refused(speech.Language.NightIsPast(night, speech));
                var memory = await told.GetAsync(watchId, night, stop);
                // What takes a night out of the calendar must still go out, and of a night that stands there the invitation may be on its
                // way.
                var hushed = hush && memory.Night is { IsOn: true, OnCalendar: false };
                var commit = new PassCommit
                {
                    Told = [memory with { Night = wish(memory.Night) }],
                    Hush = hushed ? [new WatchNight(watchId, night)] : [],
                    BySubscriber = true,
                };
                return Outcome(
                    await passes.CommitAsync(commit, now, stop), speech.Language.LettersAbout(night, watch.Site.Name, come: !hush, speech));
            },
            stop);

    private async Task<SteeringOutcome?> KeepAsync(
        IReadOnlyList<Decided> decisions, PassCommit commit, string says, Instant now, CancellationToken stop) =>
        Outcome(
            await passes.CommitAsync(
                commit with
                {
                    Told = [.. decisions.Select(d => d.Memory with { Night = d.Decision.Next })],
                    Letters = await letters.WriteAsync([.. decisions.Select(d => d.Decision.Letter).OfType<LetterOrder>()], now, stop),
                    Schedule = [.. decisions.SelectMany(d => DueCalendar.OfTold(d.Decision.Next, d.Plan, now))],
                    BySubscriber = true,
                },
                now,
                stop),
            says);

    private static SteeringOutcome.Done? Outcome(PassOutcome kept, string says) =>
        kept is PassOutcome.Committed ? new SteeringOutcome.Done(says) : null;

    private async Task<SteeringOutcome> AgainAsync(Func<Instant, Task<SteeringOutcome?>> wish, CancellationToken stop)
    {
        for (var left = Tries; left > 0; left--)
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                if (await wish(clock.GetCurrentInstant()) is { } outcome) return outcome;
            }
            catch (RowUnreadableException)
            {
                return new SteeringOutcome.Refused(Speech.ToAnybody.Language.NightUnreadable);
            }
        }

        return new SteeringOutcome.Refused(Speech.ToAnybody.Language.NightIsBusy);
    }

    private async Task<NightPlan> PlanAsync(Watch watch, ToldNight before, PassForecasts forecasts, Instant now) =>
        (await NightEvaluation.AskAsync(watch, before.Night, forecasts, now, sky, before.Told)).Plan;

    private sealed record Decided(ToldMemory Memory, NightPlan Plan, PolicyDecision Decision)
    {
        public WatchNight About => new(Plan.Watch.Id, Plan.Night);
    }
}
