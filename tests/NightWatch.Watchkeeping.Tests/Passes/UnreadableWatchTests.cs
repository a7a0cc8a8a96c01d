using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Letters.Policy;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Verdicts;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

/// <summary>One row that cannot be read costs nobody else a letter, and its name is told.</summary>
public sealed class UnreadableWatchTests : IAsyncLifetime
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 5, 25, 2, 0);
    private static readonly LocalDate Today = new(2027, 5, 25);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-unreadable-").FullName;
    private readonly VirtualClock clock = new(Noon);
    private readonly Lines log = new();
    private ServiceProvider parts = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() =>
        parts = await RehearsalParts.StartAsync(
            folder,
            clock,
            change: services =>
                services
                    .AddSingleton<ILoggerProvider>(log)
                    .AddSingleton<ILoggerFactory>(_ => LoggerFactory.Create(logging => logging.AddProvider(log))));

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        log.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("substr(body, 1, 40) || '{' || substr(body, 42)")]
    [InlineData("replace(body, '\"zone\":\"', '\"zone\":\"Lost/')")]
    public async Task The_others_are_planned_and_looked_at_and_what_was_due_for_it_is_closed(string wrong)
    {
        var broken = Cast.Watches[1].Id;
        await parts
            .GetRequiredService<DueStore>()
            .ScheduleAsync(
                [
                    .. Cast.Watches.Select(watch => new DueItem(
                        new DueKey(watch.Id, PassKind.Morning, Today), Noon, Noon + Duration.FromHours(5))),
                ],
                Cancel);
        await RunSqlAsync($"UPDATE watch SET body = {wrong} WHERE id = '{broken}'");

        var tally = await parts.GetRequiredService<PassRunner>().RunDueAsync(Cancel);
        await parts.GetRequiredService<DuePlanner>().PlanAsync(Noon, Cancel);
        await parts.GetRequiredService<PassRunner>().RunDueAsync(Cancel);

        Assert.Equal((2, 0), (tally.Watches, tally.Failed));
        Assert.Equal(0L, await RunSqlAsync($"SELECT count(*) FROM due WHERE watch_id = '{broken}' AND state IN ('Pending', 'Claimed')"));
        Assert.Equal(
            1L,
            await RunSqlAsync(
                $"SELECT count(*) FROM due WHERE watch_id = '{broken}' AND state = 'Dropped' AND why LIKE 'the watch cannot be read: %'"));
        foreach (var watch in Cast.Watches.Where(watch => watch.Id != broken))
        {
            Assert.NotEmpty(await parts.GetRequiredService<VerdictStore>().OfNightAsync(watch.Id, Today, Cancel));
            Assert.NotEqual(0L, await RunSqlAsync($"SELECT count(*) FROM due WHERE watch_id = '{watch.Id}' AND state = 'Pending'"));
        }

        var said = Assert.Single(log.Errors);
        Assert.Contains($"watch {broken} of m***@e***", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_night_whose_memory_cannot_be_read_is_left_out_of_the_look_and_the_look_is_not_repeated_for_ever()
    {
        var watch = Cast.Watches[0];
        await RunSqlAsync($"INSERT INTO told_night (watch_id, night, version, body) VALUES ('{watch.Id}', '2027-05-26', 1, '{{')");
        await parts.GetRequiredService<DueStore>().ScheduleAsync(
            [
                new DueItem(new DueKey(watch.Id, PassKind.Evening, Today), Noon, Noon + Duration.FromHours(5)),
                new DueItem(new DueKey(watch.Id, PassKind.Morning, Today.PlusDays(1)), Noon, Noon + Duration.FromHours(5)),
            ],
            Cancel);

        await parts.GetRequiredService<PassRunner>().RunDueAsync(Cancel);

        Assert.Empty(await parts.GetRequiredService<VerdictStore>().OfNightAsync(watch.Id, Today.PlusDays(1), Cancel));
        Assert.NotEmpty(await parts.GetRequiredService<VerdictStore>().OfNightAsync(watch.Id, Today.PlusDays(2), Cancel));
        Assert.Equal(
            0L, await RunSqlAsync("SELECT count(*) FROM due WHERE pass IN ('Evening', 'Morning') AND state IN ('Pending', 'Claimed')"));
        Assert.Equal(
            1L,
            await RunSqlAsync(
                "SELECT count(*) FROM due WHERE pass = 'Morning' AND state = 'Dropped' AND why LIKE '%told_night%cannot be read%'"));
    }

    private async Task<object?> RunSqlAsync(string sql)
    {
        await using var command = parts.GetRequiredService<Database>().Connections.CreateCommand(sql);
        return await command.ExecuteScalarAsync(Cancel);
    }

    private sealed class Lines : ILoggerProvider, ILogger
    {
        private readonly List<string> errors = [];

        public IReadOnlyList<string> Errors
        {
            get
            {
                lock (errors) return [.. errors];
            }
        }

        public ILogger CreateLogger(string categoryName) => this;

        public void Dispose()
        {
        }

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (logLevel < LogLevel.Error) return;
            lock (errors) errors.Add(formatter(state, exception));
        }
    }
}
