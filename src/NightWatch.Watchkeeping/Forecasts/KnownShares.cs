using System.Diagnostics.Metrics;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>
/// How much of what a verdict reads each feed tells: by feed and quantity the share of the next 48 hours that is known, as a mean over
/// about the last eight answers. A quantity that a feed stops telling is unknown to every verdict, and is said once to the operator.
/// </summary>
/// <remarks>
/// Every feed is held to cloud, temperature, wind and precipitation from its first answers on; to anything else once it has told it, since
/// not every feed tells gusts or fog everywhere.
/// </remarks>
internal sealed partial class KnownShares
{
    private const int Hours = 48;
    private static readonly Duration Hour = Duration.FromHours(1);
    private const double Newest = 1.0 / 8;
    private const double Lacking = 0.3;
    private const double Enough = 0.7;
    private const string QuantityKey = "nightwatch.quantity";

    private static readonly Asked[] Quantities =
    [
        Asked.At("cloud", InstantQuantity.CloudAreaFraction, isOwed: true),
        Asked.At("air", InstantQuantity.AirTemperatureC, isOwed: true),
        Asked.At("dewPoint", InstantQuantity.DewPointC, isOwed: false),
        Asked.At("wind", InstantQuantity.WindMps, isOwed: true),
        Asked.At("fog", InstantQuantity.FogAreaFraction, isOwed: false),
        Asked.Over("precipitation", PeriodQuantity.PrecipitationMm, isOwed: true),
        Asked.Over("rainProbability", PeriodQuantity.PrecipitationProbability, isOwed: false),
        Asked.Over("gust", PeriodQuantity.GustMps, isOwed: false),
    ];

    private readonly Lock gate = new();
    private readonly Dictionary<(string Feed, string Quantity), Kept> shares = [];
    private readonly ILogger<KnownShares> log;

    public KnownShares(Telemetry telemetry, ILogger<KnownShares> log)
    {
        this.log = log;
        telemetry.Meter.CreateObservableGauge(
            "nightwatch.feed.known", Measure, "1", "Share of the next 48 hours that a feed's answers tell.");
        telemetry.Meter.CreateObservableGauge(
            "nightwatch.feed.lacking", Lacks, "{quantity}", "1 where a feed does not tell a quantity that it should, 0 where it does.");
    }

    /// <summary>A feed answered.</summary>
    public void Answered(ForecastSeries series)
    {
        foreach (var asked in Quantities)
        {
            var share = asked.ShareIn(series);
            var (was, now) = Note(series.FeedId, asked, share);
            if (now.IsLacking && !was.IsLacking) LogLacking(series.FeedId, asked.Name, now.Share, Hours);
            else if (was.IsLacking && !now.IsLacking) LogToldAgain(series.FeedId, asked.Name);
        }
    }

    private (Kept Was, Kept Now) Note(string feed, Asked asked, double share)
    {
        lock (gate)
        {
            // What is owed is taken as told at first, anything else as not told: neither is said to have changed by the first answer.
            if (!shares.TryGetValue((feed, asked.Name), out var was))
                was = new Kept(asked.IsOwed ? Enough : share, asked.IsOwed, IsLacking: false);
            var mean = was.Share + Newest * (share - was.Share);
            var isOwed = was.IsOwed || mean >= Enough;
            var now = new Kept(mean, isOwed, isOwed && (was.IsLacking ? mean < Enough : mean < Lacking));
            shares[(feed, asked.Name)] = now;
            return (was, now);
        }
    }

    private Measurement<double>[] Measure() => Each(kept => kept.Share);

    private Measurement<long>[] Lacks() => Each(kept => kept.IsLacking ? 1L : 0L);

    private Measurement<T>[] Each<T>(Func<Kept, T> figure)
        where T : struct
    {
        lock (gate)
        {
            return
            [
                .. shares.Select(share => new Measurement<T>(
                    figure(share.Value),
                    new KeyValuePair<string, object?>(Telemetry.FeedKey, share.Key.Feed),
                    new KeyValuePair<string, object?>(QuantityKey, share.Key.Quantity))),
            ];
        }
    }

    [LoggerMessage(
        203,
        LogLevel.Error,
        "{Feed} does not tell {Quantity} any more: its answers hold {Share:P0} of the next {Hours} hours. It is unknown to every verdict " +
        "by this feed until it comes back."
    )]
    private partial void LogLacking(string feed, string quantity, double share, int hours);

    [LoggerMessage(204, LogLevel.Information, "{Feed} tells {Quantity} again.")]
    private partial void LogToldAgain(string feed, string quantity);

    private readonly record struct Kept(double Share, bool IsOwed, bool IsLacking);

    private delegate void Fill(ForecastSeries series, Instant first, Span<double> values);

    private sealed record Asked(string Name, bool IsOwed, Fill Fill)
    {
        public static Asked At(string name, InstantQuantity quantity, bool isOwed) =>
            new(name, isOwed, (series, first, values) => series.Along(quantity, first, Hour, values));

        public static Asked Over(string name, PeriodQuantity quantity, bool isOwed) =>
            new(name, isOwed, (series, first, values) => series.Along(quantity, first, Hour, values));

        public double ShareIn(ForecastSeries series)
        {
            Span<double> values = stackalloc double[Hours];
            // From the next whole hour on: the first one may have begun before the series does.
            Fill(series, WholeHour.AtOrBefore(series.RetrievedAt) + Hour, values);
            var known = 0;
            foreach (var value in values) known += double.IsNaN(value) ? 0 : 1;
            return (double)known / Hours;
        }
    }
}
