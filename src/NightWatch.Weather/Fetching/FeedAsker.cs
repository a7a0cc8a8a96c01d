using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>Brings the archive up to date for one feed and cell, if the feed may be asked at all.</summary>
internal sealed class FeedAsker(IForecastArchive archive, ReadAnswers read, IFeedHolds holds, IClock clock, FetchRules rules)
{
    /// <summary>
    /// The kept runs after asking, newest first, whether the feed answered just now, and why not where it was asked in vain.
    /// </summary>
    /// <param name="feed">The feed.</param>
    /// <param name="cell">The cell of its grid.</param>
    /// <param name="take">How many runs.</param>
    /// <param name="mayAsk">False: it was asked in this pass, only what is kept is wanted again.</param>
    /// <param name="cancellationToken">Stops it.</param>
    public async Task<(IReadOnlyList<KeptAnswer> Runs, bool IsNews, FeedNote? Note)> RunsAsync(
        IForecastFeed feed, FeedCell cell, int take, bool mayAsk, CancellationToken cancellationToken)
    {
        var runs = await archive.RunsAsync(feed.Id, cell.Key, take, cancellationToken);
        if (!mayAsk || !await MayAskAsync(feed.Id, cell, runs, cancellationToken))
            return (runs, false, null);
        var note = await feed.FetchAsync(cell.Place, Known(runs), cancellationToken) switch
        {
            Fetched.Fresh fresh => await KeepAsync(feed.Id, cell, fresh.Head, [fresh.Series], cancellationToken),
            Fetched.Unchanged unchanged => await ConfirmAsync(runs, unchanged.Expires, cancellationToken),
            Fetched.Unavailable none => await HoldAsync(feed.Id, cell, none, cancellationToken),
            var other => throw new InvalidOperationException($"A feed answered with {other.GetType()}."),
        };
        return (await archive.RunsAsync(feed.Id, cell.Key, take, cancellationToken), note is null, note);
    }

    /// <summary>The same for members, of which the newest answer is enough.</summary>
    public async Task<(IReadOnlyList<KeptAnswer> Runs, FeedNote? Note)> MembersAsync(
        IEnsembleFeed feed, FeedCell cell, bool mayAsk, CancellationToken cancellationToken)
    {
        var id = MembersId.Of(feed.Id);
        var runs = await archive.RunsAsync(id, cell.Key, 1, cancellationToken);
        if (!mayAsk || !await MayAskAsync(id, cell, runs, cancellationToken))
            return (runs, null);
        var note = await feed.FetchMembersAsync(cell.Place, Known(runs), cancellationToken) switch
        {
            FetchedMembers.Fresh fresh => await KeepAsync(id, cell, fresh.Head, fresh.Members, cancellationToken),
            FetchedMembers.Unchanged unchanged => await ConfirmAsync(runs, unchanged.Expires, cancellationToken),
            FetchedMembers.Unavailable none => await HoldAsync(id, cell, none.Reason, cancellationToken),
            var other => throw new InvalidOperationException($"A feed answered with {other.GetType()}."),
        };
        return (await archive.RunsAsync(id, cell.Key, 1, cancellationToken), note);
    }

    private static FetchedHead? Known(IReadOnlyList<KeptAnswer> runs) => runs.Count > 0 ? runs[0].Head : null;

    private async Task<bool> MayAskAsync(string id, FeedCell cell, IReadOnlyList<KeptAnswer> runs, CancellationToken cancellationToken)
    {
        var feedHold = await holds.HeldUntilAsync(id, null, cancellationToken);
        var cellHold = await holds.HeldUntilAsync(id, cell.Key, cancellationToken);
        var until = feedHold is { } a && cellHold is { } b ? Instant.Max(a, b) : feedHold ?? cellHold;
        return rules.MayAsk(Known(runs), until, clock.GetCurrentInstant());
    }

    private async Task<FeedNote?> KeepAsync(
        string id, FeedCell cell, FetchedHead head, ImmutableArray<ForecastSeries> series, CancellationToken cancellationToken)
    {
        var kept = await archive.AddAsync(id, cell.Key, head, series, cancellationToken);
        read.Keep(kept, [.. series.Select(one => one.KeptAs(kept, one.RetrievedAt))]);
        return null;
    }

    private async Task<FeedNote?> ConfirmAsync(IReadOnlyList<KeptAnswer> runs, Instant? expires, CancellationToken cancellationToken)
    {
        if (runs.Count > 0)
            await archive.ConfirmAsync(runs[0].Id, expires, clock.GetCurrentInstant(), cancellationToken);
        return null;
    }

    private async Task<FeedNote?> HoldAsync(string id, FeedCell cell, Fetched.Unavailable none, CancellationToken cancellationToken)
    {
        if (rules.HoldUntil(none, clock.GetCurrentInstant()) is { } until)
            await holds.HoldAsync(id, none.WholeFeed ? null : cell.Key, until, none.OperatorMustAct, cancellationToken);
        return new FeedNote(id, none.Why, none.OperatorMustAct);
    }
}
