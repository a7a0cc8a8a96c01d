using System.Collections.Concurrent;
using NightWatch.Delivery.Outbox;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Service.Ticking;

/// <summary>What the service does at its ticks: passes, letters, chores. Stateless but for how the last of each went.</summary>
internal sealed partial class Ticker(
    PassRunner passes, OutboxSender outbox, Chores chores, IClock clock, Telemetry telemetry, ILogger<Ticker> log) : ITicks
{
    // So many watches take far longer than it takes to give their memory back.
    private const int LargePass = 1_000;

    private static readonly Duration Jump = Duration.FromMinutes(10);

    private readonly ConcurrentDictionary<string, string> troubles = new();

    /// <summary>When a tick of passes last came to its end; null: none yet.</summary>
    public Instant? LastTick { get; private set; }

    /// <summary>Why the last tick failed; null: it did not, or a later one went well.</summary>
    public string? Trouble => troubles.Values.FirstOrDefault();

    /// <summary>
    /// Everything in order, as one process does it that has nothing to wait for (the rehearsal). Never throws but for a stop.
    /// </summary>
    public async Task TickAsync(CancellationToken stop)
    {
        await DoAsync(nameof(TickAsync), async () =>
        {
            await chores.PlanAsync(stop);
            await passes.RunDueAsync(stop);
            await SendAllAsync(stop);
            await chores.TidyAsync(stop);
        });
        LastTick = clock.GetCurrentInstant();
    }

    /// <summary>Looks at what is due. Never throws but for a stop, between two subscribers.</summary>
    public async Task PassAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (LastTick is { } last && (now - last > Jump || now < last)) LogJump(last, now);
        await DoAsync(nameof(PassAsync), async () =>
        {
            if ((await passes.RunDueAsync(stop)).Watches >= LargePass) FreeMemory.GiveBack();
        });
        LastTick = now;
    }

    /// <summary>Sends what is queued, also while a long pass is under way. Never throws but for a stop, between two letters.</summary>
    public Task SendAsync(CancellationToken stop) => DoAsync(nameof(SendAsync), () => SendAllAsync(stop));

    /// <summary>Plans and tidies, beside the passes. Never throws but for a stop.</summary>
    public Task ChoresAsync(CancellationToken stop) => DoAsync(nameof(ChoresAsync), async () =>
    {
        await chores.PlanAsync(stop);
        await chores.TidyAsync(stop);
    });

    private async Task SendAllAsync(CancellationToken stop)
    {
        using var timer = telemetry.Begin(Stage.Outbox);
        await outbox.SendDueAsync(stop);
    }

    private async Task DoAsync(string what, Func<Task> work)
    {
        using var timer = telemetry.Begin(Stage.Tick);
        try
        {
            await work();
            troubles.TryRemove(what, out _);
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            troubles[what] = failure.Message;
            timer.Fail(failure);
            LogFailed(failure);
        }
    }

    [LoggerMessage(
        111, LogLevel.Warning, "The clock went from {Last} to {Now} between two ticks; what is due is caught up or dropped by rule")]
    private partial void LogJump(Instant last, Instant now);

    [LoggerMessage(112, LogLevel.Error, "The tick failed and is tried again with the next one")]
    private partial void LogFailed(Exception failure);
}
