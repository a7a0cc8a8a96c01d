using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Store.Calendar;
using NightWatch.Store.Chances;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Forecasts;
using NightWatch.Store.News;
using NightWatch.Store.Outbox;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Secrets;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Suppression;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Verdicts;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Plans;

/// <summary>Makes the store issue each of its statements once; <see cref="StatementPlanPromises"/> names those that it misses.</summary>
internal sealed class EveryStatement(Database database, CancellationToken cancel)
{
    private const string WatchId = "core-at-the-bend";
    private const string Ilse = "ilse.vermaak@example.org";

    private static readonly Instant Now = Given.Now;

    private readonly WatchStore watches = new(database);
    private readonly DueStore due = new(database);
    private readonly OutboxStore outbox = new(database);
    private readonly SubscriberStore subscribers = new(database);

    public async Task RunAsync()
    {
        await database.PendingAsync(cancel);
        await database.TryWriteAsync(cancel);
        await WatchesAsync();
        await WeatherAsync();
        await DueAsync();
        await PassesAsync();
        await OutboxAsync();
        await SuppressionAsync();
        await PagesAsync();
        await new BacklogStore(database).ReadAsync(["fake", "silent"], Now, cancel);
        await new Recovery(database).FreeAbandonedAsync(Now, cancel);
        await new Retention(database).ApplyAsync(new RetentionRule(), Now, cancel);
        await subscribers.EraseWatchAsync(WatchId, Now, cancel);
        await subscribers.EraseAsync("reader-7@example.org", cancel);
    }

    private async Task WatchesAsync()
    {
        var sites = new SiteStore(database);
        await watches.PutAsync(Given.Watch(), Now, cancel);
        await sites.FindAsync("windmill-bend", cancel);
        await sites.ListAsync(cancel);
        await sites.RemoveAsync("windmill-bend", cancel);
        await watches.FindAsync(WatchId, cancel);
        await watches.FindAsync([WatchId, "w1"], cancel);
        await watches.PagesAsync(2, cancel).FirstAsync(cancel);
        await watches.ListAsync(cancel);
        await watches.CountAsync(cancel);
        await watches.CountRestingAsync(Now, cancel);
        await watches.OfSubscriberAsync(Ilse, cancel);
        await watches.PauseAsync(WatchId, true, Now, cancel);
        await watches.PauseAsync(WatchId, false, Now, cancel);
        await watches.StopDigestAsync(Ilse, Now, cancel);
        await watches.PutAsync(Given.Watch("to go"), Now, cancel);
        await watches.RemoveAsync("to go", Now, cancel);
    }

    private async Task WeatherAsync()
    {
        var (forecasts, rain, holds) = (new ForecastStore(database), new RainStore(database), new FeedHoldStore(database));
        var learnt = new LearntChanceStore(database);
        var id = await forecasts.AddAsync("fake", "here", new(null, null, Now), Given.Answer(), cancel);
        await forecasts.ConfirmAsync(id, null, Now, cancel);
        await forecasts.LastAsync("fake", "nowhere", cancel);
        await forecasts.CountSinceAsync("fake", Now - Duration.FromDays(1), cancel);
        await forecasts.FindAsync([id, 1], cancel);
        await rain.MergeAsync("here", [new(Now, 1, Now)], cancel);
        await rain.SinceAsync("here", Now - Duration.FromDays(4), cancel);
        await holds.HoldAsync("fake", null, Now, waitsForOperator: false, cancel);
        await holds.HeldUntilAsync("fake", null, cancel);
        await holds.ListAsync(Now, cancel);
        await learnt.PutAsync(
            new LearntChance
            {
                For = new("fake", 2),
                Version = 1,
                LearntAt = Now,
                Learning = ChanceLearning.Start(ChancePrior.Shipped, 2),
                Proof = LearningProof.Of([]),
                Sources = new Dictionary<string, int>(),
            },
            cancel);
        await learnt.NewestAsync(ChancePrior.Shipped, cancel);
        await learnt.AllAsync(ChancePrior.Shipped, cancel);
        await learnt.VersionsAsync(cancel);
    }

    private async Task DueAsync()
    {
        await due.ScheduleAsync([Given.Due(slot: "a"), Given.Due(pass: PassKind.After)], cancel);
        await due.NextAsync(cancel);
        await due.CatchUpAsync(Now, cancel);
        var claims = await due.ClaimAsync(Now, 9, Given.Lease, cancel);
        await due.RenewAsync(claims, Now, Given.Lease, cancel);
        await due.CloseAsync(claims[0], Now, cancellationToken: cancel);
        await due.ReleaseAsync(claims, Now, cancel);
        await BreakAsync("UPDATE due SET pass = 'Evenimg' WHERE watch_id = 'core-at-the-bend' AND state = 'Pending'");
        Assert.Empty(await due.ClaimAsync(Now, 9, Given.Lease, cancel));
        await due.RefreshStatisticsAsync(cancel);
    }

    private async Task PassesAsync()
    {
        var (told, verdicts, outcomes) = (new ToldNightStore(database), new VerdictStore(database), new OutcomeStore(database));
        using var passes = new PassStore(database);
        for (var pass = 0; pass < 2; pass++)
        {
            var commit = new PassCommit
            {
                Told = [await told.GetAsync(WatchId, Given.Night, cancel)],
                Verdicts = [Given.Verdict()],
                Hush = [new(WatchId, Given.Night)],
                Rest = new(WatchId, Given.Night),
                BySubscriber = true,
            };
            Assert.IsType<PassOutcome.Committed>(await passes.CommitAsync(commit, Now, cancel));
        }

        var owed = (Key: "news", Reader: "reader-7@example.org");
        Assert.True(await new NewsStore(database).IsOwedAsync(owed.Reader, cancel));
        await passes.CommitAsync(
            new PassCommit { Letters = [Given.Letter(owed.Key, recipient: owed.Reader) with { TellsNewsTo = owed.Reader }] }, Now, cancel);
        await told.FromAsync(WatchId, Given.Night, cancel);
        await told.AllFromAsync(Given.Night, cancel);
        await verdicts.OfNightAsync(WatchId, Given.Night, cancel);
        await verdicts.LatestAsync(WatchId, Given.Night, cancel);
        await verdicts.OfWatchAsync(WatchId, Given.Night, Given.Night, cancel);
        foreach (var (runs, figures) in ((bool, bool)[])[(true, false), (false, true), (false, false)])
            await verdicts.MarksAsync(WatchId, Given.Night, Given.Night, runs, figures, cancel);
        await outcomes.PutAsync(WatchId, Given.Night, NightOutcome.Clear, OutcomeSource.Debrief, Now, cancel);
        await outcomes.OfNightAsync(WatchId, Given.Night, cancel);
        await outcomes.ForgetAsync(WatchId, cancel);
    }

    private async Task OutboxAsync()
    {
        var about = new WatchNight(WatchId, Given.Night);
        await outbox.EnqueueAsync([Given.Letter("first", about: about), Given.Letter("second"), Given.Letter("third")], Now, cancel);
        var letters = await outbox.ClaimAsync(Now, 2, Given.Lease, cancel);
        await outbox.RenewAsync(letters, Now, Given.Lease, cancel);
        await outbox.CompleteAsync(letters[0], new SendOutcome.Sent("ok"), Now, cancel);
        await outbox.CompleteAsync(letters[0] with { Fence = 99 }, new SendOutcome.Sent("ok"), Now, cancel);
        await outbox.ReleaseAsync(letters, cancel);
        await BreakAsync("UPDATE outbox SET mime = @wrong WHERE dedupe_key = 'third'");
        await outbox.ClaimAsync(Now, 9, Given.Lease, cancel);
        await outbox.ExpireAsync(Now, cancel);
        await outbox.ListAsync(null, 10, cancel);
        await outbox.ListAsync(OutboxState.Dead, 10, cancel);
        await outbox.MimeAsync(1, cancel);
        await outbox.CountAsync(cancel);
        await outbox.FindAsync(1, cancel);
        await outbox.ReviveAsync(1, Now, cancel);
        await outbox.ReviveAllAsync(Now, cancel);
        await outbox.DropAsync(1, "of no use", Now, cancel);
        await outbox.DropAsync(null, "of no use", Now, cancel);
    }

    private async Task SuppressionAsync()
    {
        var suppression = new SuppressionStore(database);
        await suppression.ListAsync(cancel);
        await suppression.FindAsync("gone-1@example.org", cancel);
        await suppression.AddAsync("gone@example.org", "put in by the operator", Now, cancel);
        await suppression.RemoveAsync("gone@example.org", cancel);
        var refused = new ServerReply(null, "5.2.2", "full");
        var outcome = await suppression.ReportAsync("m2", "reader-0@example.org", refused, Now - Duration.FromDays(9), Now, cancel);
        Assert.Equal(BounceOutcome.Suppressed, outcome);
    }

    private async Task PagesAsync()
    {
        var (tickets, sessions, rations) = (new TicketStore(database), new SessionStore(database), new RationStore(database));
        var (secrets, feeds) = (new SecretStore(database), new CalendarFeedStore(database));
        var body = SubscriberStore.Body(Given.Watch());
        await tickets.AddAsync(new("hash", TicketPurpose.Confirm, Ilse, body, Now + Duration.FromHours(1)), Now, cancel);
        await tickets.FindAsync("hash", TicketPurpose.Confirm, Now, cancel);
        Assert.NotNull(await subscribers.ConfirmAsync("hash", Now, _ => [], cancel));
        await sessions.BeginAsync("hash", Ilse, Now, Now + Duration.FromHours(1), cancel);
        await sessions.FindAsync("hash", Now, cancel);
        await sessions.ProlongAsync("hash", Now + Duration.FromHours(2), cancel);
        await sessions.EndAsync("hash", cancel);
        await rations.TakeAsync("r1", [new(Duration.FromDays(30), 9999)], Now, cancel);
        await secrets.GetOrMakeAsync("key", 16, Now, cancel);
        await secrets.ListAsync("key-ring/", value => value, cancel);
        await feeds.TokenAsync(Ilse, generation => $"token {generation}", Now, cancel);
        await feeds.RevokeAsync(Ilse, generation => $"token {generation}", Now, cancel);
        await feeds.AddressOfAsync("token 1", cancel);
        await subscribers.CountAsync(cancel);
        await subscribers.LettersAsync(Ilse, cancel);
    }

    private Task<int> BreakAsync(string sql) =>
        database.WriteAsync(session => session.ExecuteAsync(sql, new { wrong = (byte[])[0, 255] }), cancel);
}
