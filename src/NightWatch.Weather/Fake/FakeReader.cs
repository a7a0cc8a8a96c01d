using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fake;

/// <summary>Reads the bodies of the fake feed.</summary>
/// <remarks>
/// One JSON object: <c>issuedAt</c> (ISO 8601), <c>place</c> {<c>latitudeDeg</c>, <c>longitudeDeg</c>, <c>elevationM</c>} and
/// <c>runs</c>, a list of one run or of all members. A run is {<c>member</c> (null or a number),
/// <c>instants</c> {<c>time</c>: [...], one list for each <see cref="InstantQuantity"/> by its name},
/// <c>periods</c> {<c>start</c>: [...], <c>end</c>: [...], one list for each <see cref="PeriodQuantity"/> by its name}}. Lists run in
/// parallel, values in the series' own units, null for unknown; a list may be left out.
/// </remarks>
public sealed class FakeReader : IForecastReader, IEnsembleReader
{
    /// <summary>Says plainly that nobody should drive for it.</summary>
    public static readonly Attribution Attribution =
        new("Invented weather for rehearsal, not a forecast", new Uri("https://example.org/"), "none needed");

    private const string Feed = "Fake feed";

    /// <inheritdoc cref="IForecastReader.FeedId"/>
    public string FeedId => "fake";

    /// <inheritdoc/>
    public ForecastSeries Read(ReadOnlyMemory<byte> body, Instant retrievedAt) =>
        FeedJson.Read(body, Feed, root => Runs(root, retrievedAt)[0]);

    /// <inheritdoc/>
    public ImmutableArray<ForecastSeries> ReadMembers(ReadOnlyMemory<byte> body, Instant retrievedAt) =>
        FeedJson.Read(body, Feed, root => Runs(root, retrievedAt));

    private ImmutableArray<ForecastSeries> Runs(JsonElement root, Instant retrievedAt)
    {
        var issuedAt = root.InstantOrNull("issuedAt") ?? throw new ForecastFormatException($"{Feed}: issuedAt is not an instant.");
        var place = root.NeedObject("place", Feed);
        var cell = place.NumberOrNull("latitudeDeg") is { } latitude && place.NumberOrNull("longitudeDeg") is { } longitude
            ? new ForecastCell(latitude, longitude, place.NumberOrNull("elevationM"))
            : throw new ForecastFormatException($"{Feed}: place has no latitudeDeg and longitudeDeg.");
        var runs = root.NeedArray("runs", Feed).EnumerateArray().Select(run => Run(run, issuedAt, retrievedAt, cell)).ToImmutableArray();
        return runs.IsEmpty ? throw new ForecastFormatException($"{Feed}: runs is empty.") : runs;
    }

    private ForecastSeries Run(JsonElement run, Instant issuedAt, Instant retrievedAt, ForecastCell cell)
    {
        var builder = new ForecastSeriesBuilder();
        var instants = run.NeedObject("instants", Feed + " run");
        var times = Times(instants, "time");
        foreach (var quantity in Enum.GetValues<InstantQuantity>())
        {
            foreach (var (index, value) in Values(instants, quantity.ToString(), times.Length))
                builder.Add(quantity, times[index], value);
        }

        var periods = run.NeedObject("periods", Feed + " run");
        var (starts, ends) = (Times(periods, "start"), Times(periods, "end"));
        foreach (var quantity in Enum.GetValues<PeriodQuantity>())
        {
            foreach (var (index, value) in Values(periods, quantity.ToString(), Math.Min(starts.Length, ends.Length)))
                builder.Add(quantity, starts[index], ends[index], value);
        }

        var member = run.NumberOrNull("member");
        return builder.Build(FeedId, "fake", issuedAt, retrievedAt, Attribution, cell, member is >= 0 and < 1000 ? (int)member : null);
    }

    private static Instant[] Times(JsonElement parent, string name) =>
        [.. parent.NeedArray(name, Feed).EnumerateArray().Select(time =>
            (time.ValueKind == JsonValueKind.String ? FeedJson.ParseInstant(time.GetString()) : null)
            ?? throw new ForecastFormatException($"{Feed}: {name} holds something that is no instant."))];

    private static IEnumerable<(int Index, double? Value)> Values(JsonElement parent, string name, int count) =>
        parent.Member(name) is { ValueKind: JsonValueKind.Array } list
            ? list.EnumerateArray().Take(count).Select((value, index) => (index, ((JsonElement?)value).NumberOrNull()))
            : [];
}
