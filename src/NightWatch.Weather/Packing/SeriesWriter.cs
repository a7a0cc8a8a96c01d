using System.Collections.Immutable;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Packing;

/// <summary>Writes what <see cref="SeriesPack"/> describes, not yet compressed. One writer writes one answer.</summary>
internal sealed class SeriesWriter
{
    private readonly Dictionary<string, int> places = new() { [""] = 0 };
    private readonly List<string> texts = [""];
    private readonly TimeAxes axes = new();
    private readonly PackWriter body = new();

    public byte[] Write(IReadOnlyList<ForecastSeries> series)
    {
        body.Count(series.Count);
        foreach (var one in series) Write(one);
        var whole = new PackWriter();
        whole.Count(texts.Count);
        foreach (var text in texts) whole.Text(text);
        axes.WriteTo(whole);
        whole.Bytes(body.Written);
        return whole.Written.ToArray();
    }

    private void Write(ForecastSeries series)
    {
        var source = series.Attribution;
        foreach (
            var text in (string[])
                [
                    series.FeedId,
                    series.ModelId,
                    source.Text,
                    source.Link.OriginalString,
                    source.Licence,
                    source.LicenceLink?.OriginalString ?? "",
                ])
            Text(text);
        body.Count(series.Member is { } member ? member + 1 : 0);
        body.Byte(series.IssuedAt is null ? (byte)0 : (byte)1);
        if (series.IssuedAt is { } issued) body.Signed(issued.ToUnixTimeTicks());
        body.Double(series.Cell.LatitudeDeg);
        body.Double(series.Cell.LongitudeDeg);
        body.Byte(series.Cell.ElevationM is null ? (byte)0 : (byte)1);
        if (series.Cell.ElevationM is { } height) body.Double(height);

        var instants = series.Instants.Where(column => !column.Value.IsEmpty).OrderBy(column => column.Key).ToList();
        body.Count(instants.Count);
        foreach (var (quantity, points) in instants)
        {
            Text(quantity.ToString());
            Axis(points, point => point.At);
            Column(points, point => point.Quality, point => point.Value);
        }

        var periods = series.Periods.Where(column => !column.Value.IsEmpty).OrderBy(column => column.Key).ToList();
        body.Count(periods.Count);
        foreach (var (quantity, points) in periods)
        {
            Text(quantity.ToString());
            Axis(points, point => point.Start);
            Axis(points, point => point.End);
            Column(points, point => point.Quality, point => point.Value);
        }
    }

    private void Column<T>(ImmutableArray<T> points, Func<T, Quality> quality, Func<T, double> value)
    {
        for (var i = 0; i < points.Length;)
        {
            var (kind, end) = (quality(points[i]), i + 1);
            while (end < points.Length && quality(points[end]) == kind) end++;
            Text(kind.ToString());
            body.Count(end - i);
            i = end;
        }

        ValueColumn.Write(body, [.. points.Select(value)]);
    }

    private void Axis<T>(ImmutableArray<T> points, Func<T, Instant> at) =>
        body.Count(axes.PlaceOf([.. points.Select(point => at(point).ToUnixTimeTicks())]));

    private void Text(string text)
    {
        if (!places.TryGetValue(text, out var place))
        {
            places.Add(text, place = texts.Count);
            texts.Add(text);
        }

        body.Count(place);
    }
}
