using System.Runtime.CompilerServices;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NodaTime;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>What one round of passes did.</summary>
internal readonly record struct PassTally(int Watches, int Letters, int Failed, int Dropped)
{
    public static PassTally operator +(PassTally a, PassTally b) =>
        new(a.Watches + b.Watches, a.Letters + b.Letters, a.Failed + b.Failed, a.Dropped + b.Dropped);
}

/// <summary>Takes what is due and looks at it, one subscriber's watches of one pass together. A watch that fails stops no other.</summary>
internal sealed partial class PassRunner(
    DueStore due,
    WatchStore watches,
    WatchLooker looker,
    SubscriberPass subscriber,
    DigestPass digest,
    ForecastSource source,
    PassOptions options,
    IClock clock,
    TimeProvider time,
    Telemetry telemetry,
    ILogger<PassRunner> log)
{
    /// <summary>Few, so that several processes have something each, and little waits where one dies.</summary>
    private const int ClaimedAtOnce = 16;

    /// <summary>More than there are processors: most of them wait, for a feed or for the transaction.</summary>
    private const int SubscribersAtOnce = 12;

    private const int MostAttempts = 5;
    private static readonly Duration RetryAfter = Duration.FromMinutes(5);

    private Duration Lease => Duration.FromSeconds(options.LeaseSeconds);

    /// <summary>Does everything that is due now. On a stop request the subscribers in hand are finished, the rest given back.</summary>
    public async Task<PassTally> RunDueAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var tally = default(PassTally);
        foreach (var dropped in await due.CatchUpAsync(now, stop))
        {
            telemetry.Dropped(dropped.Item.Key.Pass, dropped.IsLate);
            LogDropped(dropped.Item.Key.Pass, dropped.Item.Key.WatchId, dropped.Item.Key.Night, dropped.Why);
            tally += new PassTally(0, 0, 0, 1);
        }

        var forecasts = source.BeginPass(CancellationToken.None);
        var (gate, start, done, passes) = (new Lock(), time.GetTimestamp(), default(PassTally), new HashSet<PassKind>());
        await using (var inHand = new ClaimsInHand(due, Lease, clock, time))
        {
            await Parallel.ForEachAsync(
                GroupsAsync(now, inHand, stop),
                new ParallelOptions { MaxDegreeOfParallelism = SubscribersAtOnce },
                async (group, _) =>
                {
                    // A subscriber that was begun is finished, since a stop waits longer than one subscriber takes.
                    var of = await RunGroupAsync(group, forecasts, CancellationToken.None);
                    inHand.LetGo(group.Select(entry => entry.Claim));
                    lock (gate)
                    {
                        done += of;
                        passes.Add(group[0].Claim.Item.Key.Pass);
                    }
                });
        }

        if (passes.Count > 0)
            LogPass(
                string.Join('+', passes.Order()),
                done.Watches,
                done.Letters,
                done.Failed,
                (long)time.GetElapsedTime(start).TotalMilliseconds);
        return tally + done;
    }

    /// <summary>One subscriber's claims of one pass after the other, claimed as the ones before them are taken up.</summary>
    private async IAsyncEnumerable<List<(DueClaim Claim, Watch Watch)>> GroupsAsync(
        Instant now, ClaimsInHand inHand, [EnumeratorCancellation] CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            IReadOnlyList<DueClaim> claims;
            using (telemetry.Begin(Stage.Claim)) claims = await due.ClaimAsync(now, ClaimedAtOnce, Lease, CancellationToken.None);
            if (claims.Count == 0) yield break;
            inHand.Take(claims);
            var groups = await GroupAsync(claims, inHand);
            for (var next = 0; next < groups.Count; next++)
            {
                if (stop.IsCancellationRequested)
                {
                    DueClaim[] rest = [.. groups.Skip(next).SelectMany(group => group.Select(entry => entry.Claim))];
                    await due.ReleaseAsync(rest, now, CancellationToken.None);
                    inHand.LetGo(rest);
                    yield break;
                }

                yield return groups[next];
            }
        }
    }

    private async Task<List<List<(DueClaim Claim, Watch Watch)>>> GroupAsync(IReadOnlyList<DueClaim> claims, ClaimsInHand inHand)
    {
        var now = clock.GetCurrentInstant();
        var found = (await watches.FindAsync([.. claims.Select(claim => claim.Item.Key.WatchId).Distinct()])).ToDictionary(watch =>
            watch.Id);
        var live = new List<(DueClaim Claim, Watch Watch)>();
        foreach (var claim in claims)
        {
            var watch = found.GetValueOrDefault(claim.Item.Key.WatchId);
            if (watch?.IsPausedAt(now) == false)
            {
                live.Add((claim, watch));
                continue;
            }

            await due.CloseAsync(claim, now, watch is null ? WhyNone(claim.Item.Key.WatchId) : "paused", CancellationToken.None);
            inHand.LetGo([claim]);
        }

        // Of several looks of one kind at one night the newest is enough; together they would write over each other. The catch-up before a
        // pass sees to most; these have become due since.
        foreach (
            var older in live.GroupBy(entry => (entry.Claim.Item.Key.WatchId, entry.Claim.Item.Key.Pass, entry.Claim.Item.Key.Night))
                .SelectMany(same =>
                    same.OrderBy(entry => entry.Claim.Item.DueAt)
                        .ThenBy(entry => entry.Claim.Item.Key.Slot, StringComparer.Ordinal)
                        .SkipLast(1))
                .ToList())
        {
            live.Remove(older);
            await due.CloseAsync(older.Claim, now, DroppedDue.Overtaken, CancellationToken.None);
            inHand.LetGo([older.Claim]);
        }

        return [.. live.GroupBy(entry => (entry.Watch.Subscriber.Key(), entry.Claim.Item.Key.Pass)).Select(group => group.ToList())];
    }

    // Row and reason have been told to the operator by who read it; here the item is only kept from coming again and again.
    private string WhyNone(string watchId) =>
        watches.Fault(watchId) is { } fault ? $"the watch cannot be read: {fault.Why}" : "the watch is gone";

    private async Task<PassTally> RunGroupAsync(List<(DueClaim Claim, Watch Watch)> group, PassForecasts forecasts, CancellationToken stop)
    {
        using var timer = telemetry.Begin(Stage.Subscriber);
        timer.Mark(Telemetry.PassKey, group[0].Claim.Item.Key.Pass);
        if (group[0].Claim.Item.Key.Pass == PassKind.Digest) return await DigestAsync(group, forecasts, stop);
        // Looking only reads, so it goes side by side; keeping goes in order.
        var tried = await Task.WhenAll(group.Select(entry => TryLookAsync(entry.Claim, entry.Watch, forecasts, stop)));
        var looks = tried.OfType<WatchPass>().ToList();
        var failed = tried.Length - looks.Count;
        return await KeepAsync(looks, forecasts, stop) + new PassTally(0, 0, failed, 0);
    }

    private async Task<WatchPass?> TryLookAsync(DueClaim claim, Watch watch, PassForecasts forecasts, CancellationToken stop)
    {
        try
        {
            return await looker.LookAsync(claim, watch, forecasts, stop);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            await GiveBackAsync([claim], failure);
            return null;
        }
    }

    private async Task<PassTally> KeepAsync(List<WatchPass> looks, PassForecasts forecasts, CancellationToken stop)
    {
        if (looks.Count == 0) return default;
        try
        {
            return await TallyAsync(await subscriber.KeepAsync(looks, forecasts, stop), [.. looks.Select(look => look.Claim)], stop);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            if (looks.Count == 1)
            {
                await GiveBackAsync([looks[0].Claim], failure);
                return new PassTally(0, 0, 1, 0);
            }

            // One subscriber is the cause. Each is now tried alone, so that the others have their letters.
            var tally = default(PassTally);
            foreach (var look in looks) tally += await KeepAsync([look], forecasts, stop);
            return tally;
        }
    }

    private async Task<PassTally> DigestAsync(List<(DueClaim Claim, Watch Watch)> group, PassForecasts forecasts, CancellationToken stop)
    {
        DueClaim[] claims = [.. group.Select(entry => entry.Claim)];
        try
        {
            return await TallyAsync(await digest.KeepAsync(claims, group[0].Watch, forecasts, stop), claims, stop);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            await GiveBackAsync(claims, failure);
            return new PassTally(0, 0, claims.Length, 0);
        }
    }

    private async Task<PassTally> TallyAsync(PassOutcome outcome, DueClaim[] claims, CancellationToken stop)
    {
        switch (outcome)
        {
            case PassOutcome.Committed committed:
                telemetry.Queued(committed.LettersQueued);
                return new PassTally(claims.Length, committed.LettersQueued, 0, 0);
            case PassOutcome.Overtaken overtaken:
                LogOvertaken(claims[0].Item.Key.Pass, claims[0].Item.Key.WatchId, overtaken.Why);
                await due.ReleaseAsync(claims, clock.GetCurrentInstant() + Duration.FromSeconds(1), stop);
                return default;
            default:
                throw new InvalidOperationException("A commit ends in one of its two outcomes.");
        }
    }

    private async Task GiveBackAsync(IReadOnlyList<DueClaim> claims, Exception failure)
    {
        var now = clock.GetCurrentInstant();
        foreach (var claim in claims)
        {
            telemetry.Failed(claim.Item.Key.Pass);
            LogFailed(failure, claim.Item.Key.Pass, claim.Item.Key.WatchId, claim.Item.Key.Night, claim.Attempt);
            if (IsLast(claim)) await due.CloseAsync(claim, now, $"failed {claim.Attempt} times: {failure.Message}", CancellationToken.None);
        }

        await due.ReleaseAsync([.. claims.Where(claim => !IsLast(claim))], now + RetryAfter, CancellationToken.None);

        // What cannot be read does not mend by itself.
        bool IsLast(DueClaim claim) => claim.Attempt >= MostAttempts || failure is RowUnreadableException;
    }

    [LoggerMessage(101, LogLevel.Information, "{Pass}: {Watches} watches, {Letters} letters, {Failed} failed, {Milliseconds} ms")]
    private partial void LogPass(string pass, int watches, int letters, int failed, long milliseconds);

    [LoggerMessage(102, LogLevel.Information, "{Pass} of {Watch} for {Night} dropped: {Why}")]
    private partial void LogDropped(PassKind pass, string watch, LocalDate night, string why);

    [LoggerMessage(103, LogLevel.Error, "{Pass} of {Watch} for {Night} failed, attempt {Attempt}")]
    private partial void LogFailed(Exception failure, PassKind pass, string watch, LocalDate night, int attempt);

    [LoggerMessage(104, LogLevel.Information, "{Pass} of {Watch} was overtaken: {Why}")]
    private partial void LogOvertaken(PassKind pass, string watch, string why);
}
