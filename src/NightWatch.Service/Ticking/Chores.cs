using NightWatch.Delivery.Bounces;
using NightWatch.Store;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Service.Ticking;

/// <summary>
/// What must be done now and then, by any one process: planning, the record, old rows. Doing it twice changes nothing, so each process
/// remembers for itself when it last did; of many, Quartz has one at a time do them.
/// </summary>
internal sealed class Chores(
    DuePlanner planner,
    Retention retention,
    DatabaseOptions options,
    RecordKeeping record,
    BounceReader bounces,
    IClock clock,
    Telemetry telemetry)
{
    private static readonly Duration PlanEvery = Duration.FromHours(6);
    private static readonly Duration TidyEvery = Duration.FromHours(24);

    private Instant? planned;
    private Instant? tidied;

    /// <summary>Fills the due table when it is time.</summary>
    public async Task PlanAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (!NowAndThen.IsTime(planned, PlanEvery, now)) return;
        using (telemetry.Begin(Stage.Schedule)) await planner.PlanAsync(now, stop);
        planned = now;
    }

    /// <summary>Keeps the record, reads what came back, and lets old rows go when it is time.</summary>
    public async Task TidyAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        await record.RunAsync(now, stop);
        await bounces.ReadDueAsync(stop);
        if (!NowAndThen.IsTime(tidied, TidyEvery, now)) return;
        using (telemetry.Begin(Stage.Retention)) await retention.ApplyAsync(options.Retention(), now, stop);
        tidied = now;
    }
}
