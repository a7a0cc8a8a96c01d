using System.Text.Json;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Watches;

namespace NightWatch.Store.Tests.Watches;

public sealed class WatchStoreOnSqlite() : WatchStorePromises(new SqliteTestDatabase());

public sealed class WatchStoreOnPostgres() : WatchStorePromises(new PostgresTestDatabase());

public abstract class WatchStorePromises(TestDatabase tested) : StoreTest(tested)
{
    private WatchStore Watches => new(Database);

    private SiteStore Sites => new(Database);

    [Fact]
    public async Task The_watches_that_rest_are_counted_by_the_hour()
    {
        var watches = new WatchStore(Database);
        var zone = Given.Site().Zone;
        var today = Given.Now.InZone(zone).Date;
        var plain = Given.Watch();
        await watches.PutAsync(plain, Given.Now, Cancel);
        await watches.PutAsync(plain with { Id = "paused", Paused = true }, Given.Now, Cancel);
        await watches.PutAsync(plain with { Id = "rests", PausedUntil = today.PlusDays(1) }, Given.Now, Cancel);
        await watches.PutAsync(plain with { Id = "has-rested", PausedUntil = today }, Given.Now, Cancel);

        Assert.Equal((4, 2), await watches.CountRestingAsync(Given.Now, Cancel));
        Assert.Equal((4, 1), await watches.CountRestingAsync(today.PlusDays(1).AtStartOfDayInZone(zone).ToInstant(), Cancel));
    }

    [Fact]
    public async Task A_watch_comes_back_as_it_was_put()
    {
        var watch = Given.Watch() with { Paused = true };
        await Watches.PutAsync(watch, Given.Now, Cancel);

        var found = await Watches.FindAsync(watch.Id, Cancel);

        Assert.Equal(Json(watch), Json(found!));
        Assert.Null(await Watches.FindAsync("another", Cancel));
    }

    [Fact]
    public async Task Putting_a_watch_again_replaces_it()
    {
        await Watches.PutAsync(Given.Watch(), Given.Now, Cancel);
        await Watches.PutAsync(Given.Watch() with { Subscriber = new("Ilse", "new@example.org") }, Given.Now, Cancel);

        Assert.Equal("new@example.org", Assert.Single(await Watches.ListAsync(Cancel)).Subscriber.Address);
        Assert.Empty(await Watches.OfSubscriberAsync("Ilse.Vermaak@example.org", Cancel));
    }

    [Fact]
    public async Task A_change_of_the_site_reaches_every_watch_on_it()
    {
        await Watches.PutAsync(Given.Watch("one"), Given.Now, Cancel);
        await Watches.PutAsync(Given.Watch("two"), Given.Now, Cancel);

        await Sites.PutAsync(Given.Site(name: "Windmill Bend, north bank"), Given.Now, Cancel);

        Assert.All(await Watches.ListAsync(Cancel), watch => Assert.Equal("Windmill Bend, north bank", watch.Site.Name));
    }

    [Fact]
    public async Task Pages_go_by_subscriber_and_keep_each_one_s_together()
    {
        foreach (var (id, address) in new[] { ("c", "x"), ("a", "y"), ("b", "x"), ("B2", "z") })
            await Watches.PutAsync(Given.Watch(id, address: $"{address}@example.org"), Given.Now, Cancel);

        var pages = await Watches
            .PagesAsync(2, Cancel)
            .Select(page => string.Join(' ', page.Select(watch => watch.Id)))
            .ToListAsync(Cancel);

        Assert.Equal(["b c a", "B2"], pages);
        Assert.Equal(["B2", "a", "b", "c"], (await Watches.ListAsync(Cancel)).Select(watch => watch.Id));
    }

    [Fact]
    public async Task A_subscriber_is_found_whatever_the_case_of_the_address()
    {
        await Watches.PutAsync(Given.Watch("one"), Given.Now, Cancel);
        await Watches.PutAsync(Given.Watch("two", address: "ilse.vermaak@EXAMPLE.org"), Given.Now, Cancel);
        await Watches.PutAsync(Given.Watch("other", address: "sipho@example.org"), Given.Now, Cancel);

        Assert.Equal(["one", "two"], (await Watches.OfSubscriberAsync("ilse.vermaak@example.org", Cancel)).Select(watch => watch.Id));
    }

    [Fact]
    public async Task A_pause_suppresses_the_unsent_letters_and_nobody_takes_what_is_due()
    {
        var watch = await Given.SavedWatchAsync(Database);
        var due = new DueStore(Database);
        var outbox = new OutboxStore(Database);
        await due.ScheduleAsync([Given.Due()], Cancel);
        await outbox.EnqueueAsync(
            [Given.Letter("about-it", about: new WatchNight(watch.Id, Given.Night)), Given.Letter("about-another")], Given.Now, Cancel);

        Assert.True(await Watches.PauseAsync(watch.Id, true, Given.Now, Cancel));

        Assert.Empty(await due.ClaimAsync(Given.Now, 10, Given.Lease, Cancel));
        Assert.Equal("about-it", Assert.Single(await outbox.ListAsync(OutboxState.Suppressed, 10, Cancel)).DedupeKey);
        Assert.Equal("about-another", Assert.Single(await outbox.ClaimAsync(Given.Now, 10, Given.Lease, Cancel)).DedupeKey);

        Assert.True(await Watches.PauseAsync(watch.Id, false, Given.Now, Cancel));
        Assert.Single(await due.ClaimAsync(Given.Now, 10, Given.Lease, Cancel));
        Assert.False(await Watches.PauseAsync("nobody", true, Given.Now, Cancel));
    }

    [Fact]
    public async Task Removing_a_watch_takes_what_is_due_and_what_was_told_with_it()
    {
        var watch = await Given.SavedWatchAsync(Database);
        await new DueStore(Database).ScheduleAsync([Given.Due()], Cancel);

        Assert.True(await Watches.RemoveAsync(watch.Id, Given.Now, Cancel));

        Assert.Null(await Watches.FindAsync(watch.Id, Cancel));
        Assert.Null(await new DueStore(Database).NextAsync(Cancel));
        Assert.False(await Watches.RemoveAsync(watch.Id, Given.Now, Cancel));
    }

    [Fact]
    public async Task A_site_with_a_watch_on_it_stays()
    {
        var watch = await Given.SavedWatchAsync(Database);

        Assert.Equal(SiteRemoval.InUse, await Sites.RemoveAsync(watch.Site.Id, Cancel));
        await Watches.RemoveAsync(watch.Id, Given.Now, Cancel);
        Assert.Equal(SiteRemoval.Removed, await Sites.RemoveAsync(watch.Site.Id, Cancel));
        Assert.Equal(SiteRemoval.NotFound, await Sites.RemoveAsync(watch.Site.Id, Cancel));
    }

    [Fact]
    public async Task A_site_comes_back_as_it_was_put()
    {
        await Sites.PutAsync(Given.Site(), Given.Now, Cancel);

        Assert.Equal(Json(Given.Site()), Json((await Sites.FindAsync("windmill-bend", Cancel))!));
        Assert.Single(await Sites.ListAsync(Cancel));
    }

    [Theory]
    [InlineData("'; DROP TABLE watch; --")]
    [InlineData("Ruhe über dem Tal ✨ \"quoted\" \\ %_")]
    public async Task Any_text_is_only_text(string name)
    {
        await Watches.PutAsync(Given.Watch(site: Given.Site(name: name)), Given.Now, Cancel);

        Assert.Equal(name, (await Watches.FindAsync("core-at-the-bend", Cancel))!.Site.Name);
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, WatchJson.Options);
}
