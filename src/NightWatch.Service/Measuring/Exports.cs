using System.Diagnostics.Metrics;
using System.Runtime.CompilerServices;
using NightWatch.Pages.Security;
using NightWatch.Service.Settings;
using NightWatch.Watchkeeping.Measuring;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace NightWatch.Service.Measuring;

/// <summary>
/// The ways out for what is measured: /metrics in Prometheus' text format, and OTLP where an endpoint is named. They are built once the
/// service is ready, beside its first tick: loading OpenTelemetry would otherwise be a third of the start.
/// </summary>
internal sealed class Exports : IAsyncDisposable
{
    private const int MostSeries = 200;

    private static readonly TimeSpan OtlpEvery = TimeSpan.FromSeconds(30);

    private readonly WebApplication app;
    private readonly AllSettings settings;
    private readonly MetricsReaders readers;
    private readonly Lazy<Task<Built>> built;
    private readonly CancellationTokenSource over = new();
    private Task refreshing = Task.CompletedTask;

    public Exports(WebApplication app, AllSettings settings)
    {
        (this.app, this.settings) = (app, settings);
        readers = new MetricsReaders(settings.Service.MetricsFrom);
        built = new(() => Task.Run(BuildAndCount));
    }

    private Uri? Otlp => settings.Service.OtlpEndpoint.Length > 0 ? new Uri(settings.Service.OtlpEndpoint) : null;

    /// <summary>Begins to collect; returns at once.</summary>
    public void Begin()
    {
        _ = built.Value;
        // A scrape reads the gauges itself; who only gets them sent has nobody to ask for them.
        if (Otlp is not null) refreshing = RefreshAsync(over.Token);
    }

    /// <summary>Answers one scrape; who may not read finds nothing there.</summary>
    public async Task AnswerAsync(HttpContext http)
    {
        if (!readers.May(http))
        {
            http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var ready = await built.Value;
        await ready.Gauges.RefreshAsync(http.RequestAborted);
        await ready.Scrape(http);
    }

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await refreshing;
        if (built.IsValueCreated)
        {
            var ready = await built.Value;
            ready.Metrics.Dispose();
            ready.Traces?.Dispose();
        }

        over.Dispose();
    }

    private Built BuildAndCount()
    {
        var ready = Build();
        app.Services.GetRequiredService<Telemetry>().BeginCounts();
        return ready;
    }

    private Built Build()
    {
        var gauges = ActivatorUtilities.CreateInstance<Gauges>(app.Services);
        var resource = ResourceBuilder
            .CreateEmpty()
            .AddService("nightwatch", serviceVersion: typeof(Exports).Assembly.GetName().Version?.ToString(3));
        // Not System.Net.Http's traces: a feed's address holds the place that is asked for.
        var metrics = Sdk.CreateMeterProviderBuilder().SetResourceBuilder(resource)
            .AddMeter(Telemetry.Name, "System.Runtime", "System.Net.Http", "Microsoft.AspNetCore.Hosting")
            .AddView(RoomOf)
            .AddPrometheusExporter();
        if (Otlp is not { } endpoint) return new Built(gauges, Scraper(metrics.Build()), null);

        var traces = SendTo(endpoint, metrics, resource);
        return new Built(gauges, Scraper(metrics.Build()), traces);
    }

    // Each series has its room from the start, 2,000 an instrument if nothing is said: 5 MiB of an idle service. Ours come from closed
    // lists, at most eight feeds by ten outcomes; requests go by route, method and answer.
    private static MetricStreamConfiguration? RoomOf(Instrument instrument) =>
        instrument.Name.StartsWith("http.server.", StringComparison.Ordinal)
            ? null
            : new MetricStreamConfiguration { CardinalityLimit = MostSeries };

    // On its own, so that who sends nothing does not load what sends.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private TracerProvider SendTo(Uri endpoint, MeterProviderBuilder metrics, ResourceBuilder resource)
    {
        metrics.AddOtlpExporter((options, reader) =>
        {
            options.Endpoint = endpoint;
            reader.PeriodicExportingMetricReaderOptions.ExportIntervalMilliseconds = (int)OtlpEvery.TotalMilliseconds;
        });
        return Sdk.CreateTracerProviderBuilder().SetResourceBuilder(resource)
            .AddSource(Telemetry.Name)
            .SetSampler(new ParentBasedSampler(new TraceIdRatioBasedSampler(settings.Service.TraceShare)))
            .AddOtlpExporter(options => options.Endpoint = endpoint)
            .Build();
    }

    private (MeterProvider Metrics, RequestDelegate Scrape) Scraper(MeterProvider metrics)
    {
        var branch = new ApplicationBuilder(app.Services);
        branch.UseOpenTelemetryPrometheusScrapingEndpoint(
            metrics, _ => true, path: null, configureBranchedPipeline: null, optionsName: null);
        return (metrics, branch.Build());
    }

    private async Task RefreshAsync(CancellationToken stop)
    {
        using var timer = new PeriodicTimer(OtlpEvery, app.Services.GetRequiredService<TimeProvider>());
        try
        {
            var ready = await built.Value;
            do await ready.Gauges.RefreshAsync(stop);
            while (await timer.WaitForNextTickAsync(stop));
        }
        catch (OperationCanceledException)
        {
        }
    }

    private sealed record Built(Gauges Gauges, (MeterProvider Metrics, RequestDelegate Scrape) Prometheus, TracerProvider? Traces)
    {
        public MeterProvider Metrics => Prometheus.Metrics;

        public RequestDelegate Scrape => Prometheus.Scrape;
    }
}

/// <summary>Puts the metrics where they are read.</summary>
internal static class MetricsEndpoint
{
    public const string Path = "/metrics";

    /// <summary>Maps the endpoint; nothing is collected before <see cref="Exports.Begin"/>.</summary>
    public static Exports MapMetrics(this WebApplication app, AllSettings settings)
    {
        var exports = new Exports(app, settings);
        app.MapGet(Path, exports.AnswerAsync);
        return exports;
    }
}
