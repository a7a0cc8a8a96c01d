using NightWatch.Service.Measuring;
using NightWatch.Service.Outbox;
using NightWatch.Service.Records;
using NightWatch.Service.Settings;
using NightWatch.Store;
using NodaTime;

namespace NightWatch.Service.Passes;

/// <summary>One tick of the service: plan, passes, letters, and once a day the old rows go. Stateless but for what it may do more rarely.</summary>
internal sealed partial class Ticker(
    DuePlanner planner, PassRunner passes, OutboxSender outbox, Retention retention, DatabaseOptions options, RecordKeeping record, IClock clock, Telemetry telemetry, ILogger<Ticker> log)
{
    private static readonly Duration PlanEvery = Duration.FromHours(6);
    private static readonly Duration TidyEvery = Duration.FromHours(24);
    private static readonly Duration Jump = Duration.FromMinutes(10);

    private Instant? planned;
    private Instant? tidied;

    /// <summary>When a tick last came to its end; null: none yet.</summary>
    public Instant? LastTick { get; private set; }

    /// <summary>What a failed tick failed of; null: the last one went well.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Does what is due. Never throws but for a stop.</summary>
    /// <param name="steps">The clock jumps from due time to due time (rehearsal), so jumps are no news.</param>
    /// <param name="stop">Stops between two subscribers and between two letters.</param>
    public async Task TickAsync(bool steps, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        using var timer = telemetry.Begin(Stage.Tick);
        if (!steps && LastTick is { } last && (now - last > Jump || now < last)) LogJump(last, now);
        try
        {
            if (planned is null || now - planned >= PlanEvery || now < planned)
            {
                using (telemetry.Begin(Stage.Schedule)) await planner.PlanAsync(now, stop);
                planned = now;
            }

            await passes.RunDueAsync(stop);
            using (telemetry.Begin(Stage.Outbox)) await outbox.SendDueAsync(stop);
            await record.RunAsync(now, stop);
            if (tidied is null || now - tidied >= TidyEvery || now < tidied)
            {
                using (telemetry.Begin(Stage.Retention)) await retention.ApplyAsync(options.Retention(), now, stop);
                tidied = now;
            }

            Trouble = null;
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            Trouble = failure.Message;
            timer.Fail(failure);
            LogFailed(failure);
        }

        LastTick = now;
    }

    [LoggerMessage(111, LogLevel.Warning, "The clock went from {Last} to {Now} between two ticks; what is due is caught up or dropped by rule")]
    private partial void LogJump(Instant last, Instant now);

    [LoggerMessage(112, LogLevel.Error, "The tick failed and is tried again with the next one")]
    private partial void LogFailed(Exception failure);
}
