using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using NightWatch.Watchkeeping.Measuring;

namespace NightWatch.Bench.Load;

/// <summary>
/// Time by stage, summed over all threads. Stages lie within each other: forecast holds parse, subscriber holds all but claim.
/// </summary>
internal sealed class StageSums : IDisposable
{
    private readonly MeterListener listener = new();
    private readonly ConcurrentDictionary<string, double> seconds = new();

    public StageSums(Telemetry telemetry)
    {
        listener.InstrumentPublished = (instrument, listening) =>
        {
            if (instrument.Meter == telemetry.Meter && instrument.Name == "nightwatch.stage.duration")
                listening.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<double>((_, took, tags, _) =>
        {
            foreach (var (key, value) in tags)
            {
                if (key == Telemetry.StageKey) seconds.AddOrUpdate((string)value!, took, (_, sum) => sum + took);
            }
        });
        listener.Start();
    }

    public IReadOnlyDictionary<string, double> Seconds => seconds;

    public void Dispose() => listener.Dispose();
}
