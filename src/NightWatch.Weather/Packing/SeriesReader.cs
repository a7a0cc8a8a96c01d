using System.Collections.Immutable;
using System.Runtime.InteropServices;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Packing;

/// <summary>Reads what <see cref="SeriesWriter"/> wrote.</summary>
internal ref struct SeriesReader(ReadOnlySpan<byte> plain)
{
    /// <summary>Every entry of a table or list takes a byte at least, but for equal steps of time: eleven years of hours.</summary>
    private readonly int most = Math.Max(plain.Length, 100_000);

    private PackReader from = new(plain);
    private string[] texts = [];
    private Instant[][] axes = [];

    public ImmutableArray<ForecastSeries> Read(long? id, Instant retrievedAt)
    {
        texts = new string[from.Count(from.Rest.Length)];
        for (var i = 0; i < texts.Length; i++) texts[i] = from.Text();
        axes = TimeAxes.Read(ref from, most);
        var series = new ForecastSeries[from.Count(from.Rest.Length)];
        for (var i = 0; i < series.Length; i++) series[i] = One(id, retrievedAt);
        return series.Length > 0
            ? ImmutableCollectionsMarshal.AsImmutableArray(series)
            : throw new ForecastFormatException("A kept forecast holds no series.");
    }

    private ForecastSeries One(long? id, Instant retrievedAt)
    {
        var (feed, model) = (Text(), Text());
        var source = new Attribution(Text(), Link(Text()), Text());
        var licence = Text();
        var member = from.Count(int.MaxValue) - 1;
        Instant? issued = from.Byte() == 0 ? null : TimeAxes.At(from.Signed());
        var (latitude, longitude) = (from.Double(), from.Double());
        double? height = from.Byte() == 0 ? null : from.Double();
        return new ForecastSeries
        {
            Id = id,
            FeedId = feed,
            ModelId = model,
            Member = member < 0 ? null : member,
            IssuedAt = issued,
            RetrievedAt = retrievedAt,
            Attribution = licence.Length == 0 ? source : source with { LicenceLink = Link(licence) },
            Cell = new ForecastCell(latitude, longitude, height),
            Instants = Instants(),
            Periods = Periods(),
        };
    }

    private ImmutableDictionary<InstantQuantity, ImmutableArray<InstantPoint>> Instants()
    {
        var columns = ImmutableDictionary.CreateBuilder<InstantQuantity, ImmutableArray<InstantPoint>>();
        for (var count = from.Count(from.Rest.Length); count > 0; count--)
        {
            var (name, times) = (Text(), Axis());
            var (qualities, values) = Column(times.Length);
            var points = new InstantPoint[times.Length];
            for (var i = 0; i < points.Length; i++) points[i] = new InstantPoint(times[i], values[i], qualities[i]);
            if (Enum.TryParse<InstantQuantity>(name, out var quantity))
                columns[quantity] = ImmutableCollectionsMarshal.AsImmutableArray(points);
        }

        return columns.ToImmutable();
    }

    private ImmutableDictionary<PeriodQuantity, ImmutableArray<PeriodPoint>> Periods()
    {
        var columns = ImmutableDictionary.CreateBuilder<PeriodQuantity, ImmutableArray<PeriodPoint>>();
        for (var count = from.Count(from.Rest.Length); count > 0; count--)
        {
            var (name, starts, ends) = (Text(), Axis(), Axis());
            if (starts.Length != ends.Length) throw new ForecastFormatException("A kept forecast holds periods without an end.");
            var (qualities, values) = Column(starts.Length);
            var points = new PeriodPoint[starts.Length];
            for (var i = 0; i < points.Length; i++) points[i] = new PeriodPoint(starts[i], ends[i], values[i], qualities[i]);
            if (Enum.TryParse<PeriodQuantity>(name, out var quantity))
                columns[quantity] = ImmutableCollectionsMarshal.AsImmutableArray(points);
        }

        return columns.ToImmutable();
    }

    private (Quality[] Qualities, double[] Values) Column(int length)
    {
        var qualities = new Quality[length];
        for (var i = 0; i < length;)
        {
            var name = Text();
            if (!Enum.TryParse<Quality>(name, out var quality))
                throw new ForecastFormatException($"A kept forecast holds values of quality '{name}'.");
            var run = from.Count(length - i);
            if (run == 0) throw new ForecastFormatException("A kept forecast holds a stretch of no values.");
            Array.Fill(qualities, quality, i, run);
            i += run;
        }

        var values = new double[length];
        ValueColumn.Read(ref from, values);
        return (qualities, values);
    }

    private string Text() => texts[Place(texts.Length)];

    private static Uri Link(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var link)
            ? link
            : throw new ForecastFormatException("A kept forecast holds a link that is none.");

    private Instant[] Axis() => axes[Place(axes.Length)];

    private int Place(int count) =>
        count > 0 ? from.Count(count - 1) : throw new ForecastFormatException("A kept forecast refers to a table that is empty.");
}
