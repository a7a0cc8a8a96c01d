using System.Globalization;
using NightWatch.Letters.Policy;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Store.Tests.Due;

public sealed class DueStoreOnSqlite() : DueStorePromises(new SqliteTestDatabase());

public sealed class DueStoreOnPostgres() : DueStorePromises(new PostgresTestDatabase());

public abstract class DueStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private static readonly Duration Hour = Duration.FromHours(1);

    private DueStore Due => new(Database);

    [Fact]
    public async Task What_is_due_for_a_subscriber_across_a_zone_s_border_is_taken_along_but_nothing_else_before_its_time()
    {
        foreach (var id in new[] { "here", "over-the-border", "far-east", "other-s" })
            await new WatchStore(Database).PutAsync(
                Given.Watch(id, address: id == "other-s" ? "other@example.org" : "ilse@example.org"), Given.Now, Cancel);
        var (half, hour) = (Given.Now + Duration.FromMinutes(30), Given.Now + Duration.FromMinutes(60));
        await Due.ScheduleAsync(
            [
                Given.Due("here"),
                Given.Due("over-the-border", at: half),
                Given.Due("far-east", at: Given.Now + Duration.FromHours(2)),
                Given.Due("other-s", at: half),
                Given.Due("here", PassKind.LeaveBy, at: half),
                Given.Due("over-the-border", PassKind.Morning, at: half),
            ],
            Cancel);
        Assert.Equal(
            ["here Evening", "over-the-border Evening"],
            (await Due.ClaimAsync(Given.Now, 1, Given.Lease, Cancel))
                .Select(claim => $"{claim.Item.Key.WatchId} {claim.Item.Key.Pass}")
                .Order());

        await Due.ScheduleAsync([Given.Due("here", PassKind.Morning), Given.Due("far-east", PassKind.Morning, at: hour)], Cancel);
        // An hour early is the evening's to take, not the morning's.
        Assert.Equal(
            ["here Morning", "over-the-border Morning"],
            (await Due.ClaimAsync(Given.Now, 1, Given.Lease, Cancel))
                .Select(claim => $"{claim.Item.Key.WatchId} {claim.Item.Key.Pass}")
                .Order());
    }

    [Fact]
    public async Task Nothing_is_claimed_before_its_time()
    {
        await ScheduleAsync(Given.Due(at: Given.Now + Hour));

        Assert.Empty(await ClaimAsync(Given.Now));
        Assert.Equal(Given.Now + Hour, await Due.NextAsync(Cancel));
        var claim = Assert.Single(await ClaimAsync(Given.Now + Hour));
        Assert.Equal((Given.Due(at: Given.Now + Hour), 1), (claim.Item, claim.Attempt));
    }

    [Fact]
    public async Task Planning_twice_leaves_one_row_at_the_later_word()
    {
        await ScheduleAsync(Given.Due());
        await ScheduleAsync(Given.Due(at: Given.Now + Hour));

        Assert.Empty(await ClaimAsync(Given.Now));
        Assert.Single(await ClaimAsync(Given.Now + Hour));
    }

    [Fact]
    public async Task What_is_done_is_not_due_again_when_it_is_planned_again()
    {
        await ScheduleAsync(Given.Due());
        Assert.True(await Due.CloseAsync(Assert.Single(await ClaimAsync(Given.Now)), Given.Now, cancellationToken: Cancel));

        await ScheduleAsync(Given.Due());

        Assert.Empty(await ClaimAsync(Given.Now));
        Assert.Null(await Due.NextAsync(Cancel));
    }

    [Fact]
    public async Task An_item_of_a_watch_that_is_gone_is_left_out()
    {
        await Due.ScheduleAsync([Given.Due(watch: "gone")], Cancel);

        Assert.Null(await Due.NextAsync(Cancel));
    }

    [Fact]
    public async Task What_is_past_its_use_is_dropped_with_a_reason_and_never_claimed()
    {
        await ScheduleAsync(Given.Due(notAfter: Given.Now + Hour));
        var late = Given.Now + 2 * Hour;

        Assert.Empty(await ClaimAsync(late));
        Assert.Equal([new DroppedDue(Given.Due(notAfter: Given.Now + Hour), "late")], await Due.CatchUpAsync(late, Cancel));
        Assert.Empty(await Due.CatchUpAsync(late, Cancel));
    }

    [Fact]
    public async Task Of_two_looks_of_one_kind_given_back_to_the_same_moment_one_is_left()
    {
        await ScheduleAsync(
            Given.Due(pass: PassKind.SameDay, slot: "11:00", at: Given.Now),
            Given.Due(pass: PassKind.SameDay, slot: "14:00", at: Given.Now));

        Assert.Equal("11:00", Assert.Single(await Due.CatchUpAsync(Given.Now, Cancel)).Item.Key.Slot);
        Assert.Equal("14:00", Assert.Single(await ClaimAsync(Given.Now)).Item.Key.Slot);
    }

    [Fact]
    public async Task Of_several_looks_of_one_kind_at_one_night_only_the_newest_is_caught_up()
    {
        await ScheduleAsync(
            Given.Due(pass: PassKind.SameDay, slot: "11:00", at: Given.Now),
            Given.Due(pass: PassKind.SameDay, slot: "14:00", at: Given.Now + 3 * Hour),
            Given.Due(pass: PassKind.SameDay, slot: "16:30", at: Given.Now + 5 * Hour),
            Given.Due(pass: PassKind.LeaveBy, at: Given.Now));
        var now = Given.Now + 4 * Hour;

        var dropped = Assert.Single(await Due.CatchUpAsync(now, Cancel));
        var claims = await ClaimAsync(now);

        Assert.Equal(("11:00", "overtaken by a later look"), (dropped.Item.Key.Slot, dropped.Why));
        Assert.Equal(
            [(PassKind.SameDay, "14:00"), (PassKind.LeaveBy, "")],
            claims.Select(claim => (claim.Item.Key.Pass, claim.Item.Key.Slot)).Order());
        foreach (var claim in claims) await Due.CloseAsync(claim, now, cancellationToken: Cancel);
        Assert.Equal("16:30", Assert.Single(await ClaimAsync(Given.Now + 5 * Hour)).Item.Key.Slot);
    }

    [Fact]
    public async Task Two_processes_never_get_the_same_item()
    {
        await Given.SavedWatchAsync(Database);
        await Due.ScheduleAsync([.. Enumerable.Range(0, 60).Select(slot => Given.Due(slot: $"{slot:D2}"))], Cancel);
        await using var other = Tested.Open();

        var hands = await Task.WhenAll(AllAsync(new(Database)), AllAsync(new(other)));

        var all = hands.SelectMany(hand => hand).Select(claim => claim.Id).ToList();
        Assert.Equal(60, all.Count);
        Assert.Equal(60, all.Distinct().Count());

        static async Task<List<DueClaim>> AllAsync(DueStore due)
        {
            var hand = new List<DueClaim>();
            while (await due.ClaimAsync(Given.Now, 3, Given.Lease, Cancel) is { Count: > 0 } more) hand.AddRange(more);
            return hand;
        }
    }

    [Fact]
    public async Task A_dead_process_loses_its_items_when_its_lease_runs_out_and_cannot_close_them_any_more()
    {
        await ScheduleAsync(Given.Due());
        var dead = Assert.Single(await ClaimAsync(Given.Now));
        Assert.Empty(await ClaimAsync(Given.Now));

        await Tested.LetLeasesRunOutAsync();
        var alive = Assert.Single(await ClaimAsync(Given.Now));

        Assert.Equal((2, dead.Fence + 1), (alive.Attempt, alive.Fence));
        Assert.False(await Due.CloseAsync(dead, Given.Now, cancellationToken: Cancel));
        Assert.True(await Due.CloseAsync(alive, Given.Now, cancellationToken: Cancel));
    }

    [Fact]
    public async Task An_item_given_back_waits_and_after_two_tries_comes_after_those_not_tried_yet()
    {
        await ScheduleAsync(Given.Due(slot: "a"));
        await Due.ReleaseAsync(await ClaimAsync(Given.Now), Given.Now + Hour, Cancel);
        Assert.Empty(await ClaimAsync(Given.Now));
        await Due.ReleaseAsync(await ClaimAsync(Given.Now + Hour), Given.Now + 2 * Hour, Cancel);
        await ScheduleAsync(Given.Due(slot: "b", at: Given.Now + 2 * Hour));

        Assert.Equal("b", Assert.Single(await ClaimAsync(Given.Now + 2 * Hour)).Item.Key.Slot);
        Assert.Equal("a", Assert.Single(await ClaimAsync(Given.Now + 2 * Hour)).Item.Key.Slot);
    }

    [Fact]
    public async Task What_is_due_for_one_subscriber_goes_to_one_process_whole()
    {
        foreach (
            var (id, address) in (IEnumerable<(string, string)>)
                [("hut", "ilse@example.org"), ("dune", "jonas@example.org"), ("lake", "Ilse@example.org"), ("pass", "jonas@example.org")])
        {
            await Given.SavedWatchAsync(Database, id, address);
            await Due.ScheduleAsync([Given.Due(watch: id)], Cancel);
        }

        await using var other = Tested.Open();
        var first = await ClaimAsync(Given.Now, atLeast: 1);
        var second = await new DueStore(other).ClaimAsync(Given.Now, 1, Given.Lease, Cancel);

        Assert.Equal(["hut", "lake"], first.Select(claim => claim.Item.Key.WatchId).Order());
        Assert.Equal(["dune", "pass"], second.Select(claim => claim.Item.Key.WatchId).Order());
    }

    [Fact]
    public async Task Many_processes_at_once_never_split_a_subscriber()
    {
        const int subscribers = 40;
        for (var i = 0; i < 3 * subscribers; i++)
        {
            await Given.SavedWatchAsync(Database, $"w{i:D3}", $"s{i % subscribers}@example.org");
            await Due.ScheduleAsync([Given.Due(watch: $"w{i:D3}")], Cancel);
        }

        await using var second = Tested.Open();
        await using var third = Tested.Open();
        var claims = (await Task.WhenAll(new[] { Database, second, third }.Select(AllAsync))).SelectMany(of => of).ToList();

        Assert.Equal(3 * subscribers, claims.Sum(claim => claim.Count));
        Assert.All(
            claims.SelectMany(claim =>
                claim.GroupBy(item => int.Parse(item.Item.Key.WatchId[1..], CultureInfo.InvariantCulture) % subscribers)),
            own => Assert.Equal(3, own.Count()));

        static Task<List<IReadOnlyList<DueClaim>>> AllAsync(Database database) => Task.Run(async () =>
        {
            var all = new List<IReadOnlyList<DueClaim>>();
            while (await new DueStore(database).ClaimAsync(Given.Now, 2, Given.Lease, Cancel) is { Count: > 0 } more) all.Add(more);
            return all;
        });
    }

    [Fact]
    public async Task A_lease_that_is_prolonged_does_not_run_out()
    {
        await ScheduleAsync(Given.Due(slot: "a"), Given.Due(slot: "b"));
        var claims = await ClaimAsync(Given.Now);
        await Tested.LetLeasesRunOutAsync();

        Assert.Equal(2, await Due.RenewAsync(claims, Given.Now, Given.Lease, Cancel));
        Assert.Empty(await ClaimAsync(Given.Now));

        await Tested.LetLeasesRunOutAsync();
        Assert.Equal(2, (await ClaimAsync(Given.Now)).Count);
        Assert.Equal(0, await Due.RenewAsync(claims, Given.Now, Given.Lease, Cancel));
    }

    private async Task ScheduleAsync(params DueItem[] items)
    {
        await Given.SavedWatchAsync(Database);
        await Due.ScheduleAsync(items, Cancel);
    }

    private Task<IReadOnlyList<DueClaim>> ClaimAsync(Instant now, int atLeast = 100) => Due.ClaimAsync(now, atLeast, Given.Lease, Cancel);
}
