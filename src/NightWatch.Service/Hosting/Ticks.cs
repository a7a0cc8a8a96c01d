using NightWatch.Service.Settings;
using NightWatch.Service.Ticking;
using NightWatch.Store.Connections;
using NodaTime;
using Quartz;

namespace NightWatch.Service.Hosting;

/// <summary>
/// Quartz's part: it ticks. What is due is in our own table and every claim has a fence, so a tick that is missed or doubled does no harm.
/// </summary>
/// <remarks>
/// Every process ticks for itself, in memory, and takes its share of passes and letters: a clustered job would run on one of them at a
/// time. The chores need one process only, and run beside the passes, which must not wait for a mailbox or an aerodrome. On PostgreSQL they
/// are a clustered job, which another process takes over when the one that has it dies; on SQLite there is one process, and nothing that
/// Quartz could write down.
/// </remarks>
internal static class Ticks
{
    private const string Cluster = "nightwatch";

    // Each chore knows for itself when it is time. No longer than the shortest time that a setting may ask for between two of one
    // (Bounces:EveryMinutes).
    private static readonly Duration ChoresEvery = Duration.FromMinutes(1);

    // A process is given up after twice the first and the second: soon enough for chores, and no load.
    private static readonly Duration CheckIn = Duration.FromSeconds(10);
    private static readonly Duration Grace = Duration.FromSeconds(10);

    public static void AddTicks(this IServiceCollection services, AllSettings settings)
    {
        var postgres = Database.KindOf(settings.Database.Connection) == DatabaseKind.PostgreSql;
        var every = Duration.FromSeconds(settings.Service.TickSeconds);
        services.AddQuartz(quartz =>
        {
            StopOnRequest(quartz);
            quartz.UseInMemoryStore();
            Every<PassJob>(quartz, "passes", every);
            Every<SendJob>(quartz, "letters", every);
            if (!postgres) Every<ChoresJob>(quartz, "chores", ChoresEvery);
        });
        if (postgres)
        {
            services.AddQuartz(
                Cluster,
                quartz =>
                {
                    StopOnRequest(quartz);
                    quartz.ConfigureScheduler(scheduler =>
                        scheduler.InstanceId =
                            (settings.Service.NodeName.Length > 0 ? settings.Service.NodeName : Environment.MachineName) +
                            $"-{Guid.NewGuid():N}"
                    );
                    quartz.UsePersistentStore(store =>
                    {
                        store.UsePostgres(source => source.DataSourceFactory = parts => parts.GetRequiredService<Database>().Connections);
                        store.UseClustering(cluster =>
                            (cluster.CheckinInterval, cluster.CheckinMisfireThreshold) = (CheckIn.ToTimeSpan(), Grace.ToTimeSpan()));
                        store.ProvisionSchema();
                        store.ConfigureStore(options => options.StoreJobDataAsStrings = true);
                    });
                    Every<ChoresJob>(quartz, "chores", ChoresEvery);
                });
        }

        services.AddQuartzHostedService(options => options.WaitForJobsToComplete = true);
    }

    /// <summary>Else a job never hears that the service is to stop, and goes through all that is due until the stop time is over.</summary>
    private static void StopOnRequest(IQuartzBuilder quartz) =>
        quartz.ConfigureScheduler(scheduler => scheduler.ShutdownJobInterruption = ShutdownJobInterruption.Always);

    private static void Every<T>(IQuartzBuilder quartz, string name, Duration interval)
        where T : class, IJob
    {
        quartz.AddJob<T>(job => job.WithIdentity(name));
        // A missed tick is worthless: the next one sees all that is due.
        quartz.AddTrigger(trigger =>
            trigger
                .ForJob(name)
                .WithIdentity(name)
                .StartNow()
                .WithSimpleSchedule(schedule =>
                    schedule
                        .WithInterval(interval.ToTimeSpan())
                        .RepeatForever()
                        .WithMisfireInstruction(SimpleTriggerMisfireInstruction.NextWithExistingCount)));
    }

    [DisallowConcurrentExecution]
    private sealed class PassJob(Ticker ticker) : IJob
    {
        public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
            await ticker.PassAsync(cancellationToken);
    }

    [DisallowConcurrentExecution]
    private sealed class SendJob(Ticker ticker) : IJob
    {
        public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
            await ticker.SendAsync(cancellationToken);
    }

    [DisallowConcurrentExecution]
    private sealed class ChoresJob(Ticker ticker) : IJob
    {
        public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
            await ticker.ChoresAsync(cancellationToken);
    }
}
