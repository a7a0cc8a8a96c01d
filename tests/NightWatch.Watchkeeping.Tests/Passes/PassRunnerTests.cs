using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

/// <summary>The service's own parts on a SQLite file of its own and a clock that is put forward by hand.</summary>
public sealed class PassRunnerTests : IAsyncLifetime
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 5, 25, 2, 0);
    private static readonly LocalDate Today = new(2027, 5, 25);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-passes-").FullName;
    private readonly VirtualClock clock = new(Noon);
    private readonly BrokenFor broken = new();
    private ServiceProvider parts = null!;

    public async ValueTask InitializeAsync()
    {
        broken.Feed = new FakeFeed(new FakeWeather(1, ClimateKind.DryDesert), clock);
        parts = await RehearsalParts.StartAsync(
            folder, clock, change: services => services.AddSingleton<IEnumerable<IForecastFeed>>(new[] { broken }));
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Every_due_watch_is_looked_at_for_each_night_ahead_and_not_again()
    {
        await ScheduleAsync(PassKind.Evening, Noon, Noon + Duration.FromHours(5));

        var first = await RunAsync();
        var second = await RunAsync();

        Assert.Equal((Cast.Watches.Count, 0), (first.Watches, first.Failed));
        Assert.Equal(0, second.Watches);
        foreach (var watch in Cast.Watches)
        {
            for (var ahead = 1; ahead <= watch.Letters.LeadNights; ahead++)
                Assert.Equal(PassKind.Evening, Assert.Single(await LooksAsync(watch, Today.PlusDays(ahead))).Pass);
        }
    }

    [Fact]
    public async Task One_watch_s_failure_stops_no_other_and_is_tried_again()
    {
        broken.LatitudeDeg = Cast.Watches[1].Site.Position.LatitudeDeg;
        await ScheduleAsync(PassKind.Morning, Noon, Noon + Duration.FromHours(5));

        var first = await RunAsync();

        Assert.Equal((2, 1), (first.Watches, first.Failed));
        Assert.NotEmpty(await LooksAsync(Cast.Watches[2], Today));
        Assert.Empty(await LooksAsync(Cast.Watches[1], Today));

        broken.LatitudeDeg = null;
        clock.AdvanceTo(Noon + Duration.FromMinutes(6));
        var again = await RunAsync();
        Assert.Equal((1, 0), (again.Watches, again.Failed));
        Assert.NotEmpty(await LooksAsync(Cast.Watches[1], Today));
    }

    [Fact]
    public async Task A_look_missed_while_the_service_was_down_is_made_good_while_it_is_of_use_and_dropped_after()
    {
        await ScheduleAsync(PassKind.Morning, Noon, Noon + Duration.FromHours(5));
        clock.AdvanceTo(Noon + Duration.FromHours(4));
        var late = await RunAsync();
        Assert.Equal((3, 0), (late.Watches, late.Dropped));

        await ScheduleAsync(PassKind.SameDay, Noon, Noon + Duration.FromHours(5));
        clock.AdvanceTo(Noon + Duration.FromHours(6));
        var tooLate = await RunAsync();
        Assert.Equal((0, 3), (tooLate.Watches, tooLate.Dropped));
    }

    [Fact]
    public async Task Without_any_forecast_the_night_is_unknown_and_nobody_is_told_anything()
    {
        broken.Silent = true;
        await ScheduleAsync(PassKind.Evening, Noon, Noon + Duration.FromHours(5));

        var tally = await RunAsync();

        Assert.Equal((3, 0, 0), (tally.Watches, tally.Letters, tally.Failed));
    }

    [Fact]
    public async Task A_subscriber_s_watches_share_one_digest_and_a_week_brings_one()
    {
        await ScheduleAsync(PassKind.Digest, Noon, Noon + Duration.FromHours(5));
        var first = await RunAsync();
        clock.AdvanceTo(Noon + Duration.FromDays(2));
        await parts
            .GetRequiredService<DueStore>()
            .ScheduleAsync(
                [new DueItem(new DueKey(Cast.Watches[0].Id, PassKind.Digest, Today.PlusDays(2)), Noon, Noon + Duration.FromDays(3))],
                TestContext.Current.CancellationToken);
        var again = await RunAsync();

        Assert.Equal((3, 1, 0), (first.Watches, first.Letters, first.Failed));
        Assert.Equal((1, 0, 0), (again.Watches, again.Letters, again.Failed));
        var digest = Assert.Single(
            await parts.GetRequiredService<OutboxStore>().ListAsync(null, 10, TestContext.Current.CancellationToken));
        Assert.Equal(("Digest", "marlo.quist@example.org"), (digest.Kind, digest.Recipient));
    }

    [Fact]
    public async Task What_an_upgrade_changed_stands_in_a_subscriber_s_first_letter_after_it_and_in_no_other()
    {
        await OweNewsAsync(Cast.Watches[0].Subscriber.Key());
        await ScheduleAsync(PassKind.Evening, Noon, Noon + Duration.FromHours(5));
        await RunAsync();
        clock.AdvanceTo(Noon + Duration.FromMinutes(5));
        await ScheduleAsync(PassKind.Digest, clock.GetCurrentInstant(), Noon + Duration.FromHours(5));
        await RunAsync();

        var texts = await TextsAsync();
        Assert.True(texts.Count > 1);
        Assert.Contains("New in these letters", texts[0], StringComparison.Ordinal);
        Assert.All(texts.Skip(1), text => Assert.DoesNotContain("New in these letters", text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nobody_who_came_after_an_upgrade_reads_what_it_changed()
    {
        await ScheduleAsync(PassKind.Digest, Noon, Noon + Duration.FromHours(5));
        await RunAsync();

        Assert.DoesNotContain("New in these letters", Assert.Single(await TextsAsync()), StringComparison.Ordinal);
    }

    /// <summary>As the migration owes it to who was there before it.</summary>
    private async Task OweNewsAsync(string address)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "kept.db")};Pooling=False");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = "INSERT INTO news_owed (address) VALUES ($address)";
        command.Parameters.AddWithValue("$address", address);
        Assert.Equal(1, await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>Of all letters, in the order in which they were queued.</summary>
    private async Task<List<string>> TextsAsync()
    {
        var outbox = parts.GetRequiredService<OutboxStore>();
        var texts = new List<string>();
        foreach (var letter in (await outbox.ListAsync(null, 20, TestContext.Current.CancellationToken)).OrderBy(letter => letter.Id))
        {
            using var mime = new MemoryStream((await outbox.MimeAsync(letter.Id, TestContext.Current.CancellationToken))!.Value.ToArray());
            texts.Add((await MimeKit.MimeMessage.LoadAsync(mime, TestContext.Current.CancellationToken)).TextBody!);
        }

        return texts;
    }

    private Task<PassTally> RunAsync() => parts.GetRequiredService<PassRunner>().RunDueAsync(TestContext.Current.CancellationToken);

    private Task ScheduleAsync(PassKind pass, Instant due, Instant notAfter) =>
        parts
            .GetRequiredService<DueStore>()
            .ScheduleAsync(
                [.. Cast.Watches.Select(watch => new DueItem(new DueKey(watch.Id, pass, Today), due, notAfter))],
                TestContext.Current.CancellationToken);

    private Task<IReadOnlyList<VerdictRecord>> LooksAsync(Watch watch, LocalDate night) =>
        parts.GetRequiredService<VerdictStore>().OfNightAsync(watch.Id, night, TestContext.Current.CancellationToken);

    /// <summary>A feed that breaks its promise not to throw for one latitude, or has nothing at all.</summary>
    private sealed class BrokenFor : IForecastFeed
    {
        public FakeFeed Feed { get; set; } = null!;

        public double? LatitudeDeg { get; set; }

        public bool Silent { get; set; }

        public string Id => Feed.Id;

        public Attribution Attribution => Feed.Attribution;

        public Task<Fetched> FetchAsync(ForecastPlace place, FetchedHead? known, CancellationToken cancellationToken)
        {
            if (Silent) return Task.FromResult<Fetched>(new Fetched.Unavailable("Nothing today.", null, false));
            if (LatitudeDeg is { } latitude && Math.Abs(place.LatitudeDeg - latitude) < 0.01)
                throw new InvalidOperationException("A feed that throws.");
            return Feed.FetchAsync(place, known, cancellationToken);
        }
    }
}
