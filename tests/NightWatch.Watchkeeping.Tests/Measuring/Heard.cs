using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using NightWatch.Watchkeeping.Measuring;

namespace NightWatch.Watchkeeping.Tests.Measuring;

/// <summary>One measurement: "nightwatch.stage.duration{nightwatch.stage=plan}" and its value.</summary>
internal sealed record Measured(string Name, string Labels, double Value)
{
    public string Series => $"{Name}{{{Labels}}}";
}

/// <summary>Hears everything that one telemetry says, and nothing of its neighbours in the same process.</summary>
internal sealed class Heard : IDisposable
{
    private readonly MeterListener listener = new();
    private readonly ConcurrentQueue<Measured> all = [];

    public Heard(Telemetry telemetry)
    {
        listener.InstrumentPublished = (instrument, listening) =>
        {
            if (instrument.Meter == telemetry.Meter) listening.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<double>((instrument, value, tags, _) => Add(instrument, value, tags));
        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) => Add(instrument, value, tags));
        listener.Start();
    }

    public IReadOnlyCollection<Measured> All => all;

    public IEnumerable<Measured> Of(string name) => all.Where(measured => measured.Name == name);

    public double Sum(string series) => all.Where(measured => measured.Series == series).Sum(measured => measured.Value);

    public int Times(string series) => all.Count(measured => measured.Series == series);

    /// <summary>Reads the gauges once.</summary>
    public void Ask() => listener.RecordObservableInstruments();

    public void Dispose() => listener.Dispose();

    private void Add(Instrument instrument, double value, ReadOnlySpan<KeyValuePair<string, object?>> tags) =>
        all.Enqueue(
            new Measured(
                instrument.Name,
                string.Join(",", tags.ToArray().OrderBy(tag => tag.Key, StringComparer.Ordinal).Select(tag => $"{tag.Key}={tag.Value}")),
                value));
}
