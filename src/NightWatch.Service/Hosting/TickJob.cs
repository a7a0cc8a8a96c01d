using NightWatch.Service.Passes;
using Quartz;

namespace NightWatch.Service.Hosting;

/// <summary>Quartz's part: it ticks. What is due is in our own table, so a tick that is missed or doubled does no harm.</summary>
[DisallowConcurrentExecution]
internal sealed class TickJob(Ticker ticker) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) => await ticker.TickAsync(steps: false, cancellationToken);
}
