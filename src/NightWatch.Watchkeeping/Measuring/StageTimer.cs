using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace NightWatch.Watchkeeping.Measuring;

/// <summary>Measures one stage from its making to its disposal. Costs next to nothing while nobody listens.</summary>
internal struct StageTimer : IDisposable
{
    private readonly Histogram<double> durations;
    private readonly Activity? span;
    private readonly string stage;
    private readonly long start;
    private string? error;

    public StageTimer(Histogram<double> durations, ActivitySource spans, string stage)
    {
        (this.durations, this.stage) = (durations, stage);
        span = spans.HasListeners() ? spans.StartActivity(stage) : null;
        start = durations.Enabled ? Stopwatch.GetTimestamp() : 0;
    }

    /// <summary>A mark on the span: words from a closed list only, never an id, an address or a place.</summary>
    public readonly void Mark(string key, object value) => span?.SetTag(key, value);

    /// <summary>The stage failed; the kind of fault is told, not its text, which may hold an address.</summary>
    public void Fail(Exception failure)
    {
        error = failure.GetType().Name;
        span?.SetStatus(ActivityStatusCode.Error).SetTag("error.type", error);
    }

    public readonly void Dispose()
    {
        if (start != 0)
        {
            var tags = new TagList { { Telemetry.StageKey, stage } };
            if (error is not null) tags.Add("error.type", error);
            durations.Record(Stopwatch.GetElapsedTime(start).TotalSeconds, tags);
        }

        span?.Dispose();
    }
}
