using System.IO.Compression;
using System.Text;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Archives;

/// <summary>Forecasts of one feed for one place as they were issued.</summary>
/// <param name="Header">What they are.</param>
/// <param name="Runs">Ascending by the time of issue, none twice; each counts as retrieved when it was issued.</param>
public sealed record IssuedForecasts(ArchiveHeader Header, IReadOnlyList<ForecastSeries> Runs);

/// <summary>The hours that came at one place.</summary>
/// <param name="Header">What they are.</param>
/// <param name="Hours">One series of them; what is unknown stays so.</param>
public sealed record OutcomeArchive(ArchiveHeader Header, ForecastSeries Hours);

/// <summary>Reads archives: JSON lines, gzip or plain, a header first.</summary>
/// <remarks>
/// <para>The header: <c>{"archive":1,"kind":"runs"|"outcome","place","latitudeDeg","longitudeDeg",
/// "elevationM","zone","feed","source"}</c>.</para>
/// <para>
/// A run: <c>{"issued","start","stepMinutes","cloudPercent":[],"airC":[],"dewPointC":[],"rainProbabilityPercent":[],
/// "rainMm":[],"windMps":[],"gustMps":[]}</c>.
/// An hour that came: <c>{"at","cloudPercent","rainMm","airC","dewPointC","gustMps","by":"laterRun"|"aerodrome"}</c>.
/// Null, or a member that is missing, is unknown. Cloud, temperatures and wind belong to their time; rain, its probability and gusts to
/// the step that ends at it. Cloud of −1 and 101 occurs in feeds' answers and is clipped; values that no weather has stay unknown. Of two
/// lines for one time the first stands.
/// </para>
/// </remarks>
public static class ForecastArchive
{
    private const string Runs = "runs";
    private const string Outcome = "outcome";
    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>Reads forecasts.</summary>
    /// <param name="file">The file's bytes.</param>
    /// <param name="longestAhead">Hours farther ahead of their issue are left out, since nobody asks for them.</param>
    /// <exception cref="ArchiveFormatException">A line is not what the format says.</exception>
    public static IssuedForecasts ReadRuns(byte[] file, Duration longestAhead) => OfLines(Lines(file), longestAhead);

    /// <summary>Reads forecasts whose lines are at hand.</summary>
    /// <param name="lines">The header first.</param>
    /// <param name="longestAhead">Hours farther ahead of their issue are left out.</param>
    /// <exception cref="ArchiveFormatException">A line is not what the format says.</exception>
    public static IssuedForecasts OfLines(IEnumerable<(string Text, int Number)> lines, Duration longestAhead)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArchiveHeader? header = null;
        var runs = new SortedList<Instant, ForecastSeries>();
        foreach (var (text, number) in lines)
        {
            using var line = new ArchiveLine(text, number);
            if (header is null)
            {
                header = HeaderOf(line, Runs);
                continue;
            }

            var issued = line.Time("issued");
            if (!runs.ContainsKey(issued)) runs.Add(issued, RunOf(line, header, issued, issued + longestAhead));
        }

        return runs.Count > 0 ? new IssuedForecasts(header!, [.. runs.Values]) : throw Empty(header, "run");
    }

    /// <summary>When the run of a line was issued.</summary>
    /// <exception cref="ArchiveFormatException">It is no line of a run.</exception>
    public static Instant IssuedIn((string Text, int Number) run)
    {
        using var line = new ArchiveLine(run.Text, run.Number);
        return line.Time("issued");
    }

    /// <summary>Reads the hours that came.</summary>
    /// <param name="file">The file's bytes.</param>
    /// <exception cref="ArchiveFormatException">A line is not what the format says.</exception>
    public static OutcomeArchive ReadOutcome(byte[] file)
    {
        ArchiveHeader? header = null;
        var (builder, last) = (new ForecastSeriesBuilder(), default(Instant?));
        foreach (var (text, number) in Lines(file))
        {
            using var line = new ArchiveLine(text, number);
            if (header is null)
            {
                header = HeaderOf(line, Outcome);
                continue;
            }

            var at = line.Time("at");
            if (line.Text("by") is var by && by is not ("laterRun" or "aerodrome"))
                throw line.Fault("by", $"{by} is not known; accepted: laterRun, aerodrome");
            builder.Add(InstantQuantity.CloudAreaFraction, at, line.NumberOrUnknown("cloudPercent") / 100)
                .Add(InstantQuantity.AirTemperatureC, at, line.NumberOrUnknown("airC"))
                .Add(InstantQuantity.DewPointC, at, line.NumberOrUnknown("dewPointC"))
                .Add(PeriodQuantity.PrecipitationMm, at - Hour, at, line.NumberOrUnknown("rainMm"))
                .Add(PeriodQuantity.GustMps, at - Hour, at, line.NumberOrUnknown("gustMps"));
            last = Instant.Max(last ?? at, at);
        }

        return last is { } end ? new OutcomeArchive(header!, Built(builder, header!, null, end)) : throw Empty(header, "hour");
    }

    private static ArchiveHeader HeaderOf(ArchiveLine line, string kind)
    {
        if (line.Number("archive", 0, int.MaxValue) is var version && version != 1)
            throw line.Fault("archive", FormattableString.Invariant($"{version} is not known; accepted: 1"));
        if (line.Text("kind") is var given && given != kind)
            throw line.Fault("kind", $"{given} is not what is wanted here; accepted: {kind}");
        return new ArchiveHeader(
            line.Text("place"), line.Number("latitudeDeg", -90, 90), line.Number("longitudeDeg", -180, 180),
            line.Number("elevationM", -500, 9000),
            line.Text("zone"), line.Text("feed"), line.Text("source"));
    }

    private static ForecastSeries RunOf(ArchiveLine line, ArchiveHeader header, Instant issued, Instant end)
    {
        var start = line.Time("start");
        var minutes = line.Number("stepMinutes", 1, 24 * 60);
        var step = Duration.FromMinutes(minutes);
        var builder = new ForecastSeriesBuilder();
        var cloud = line.Row("cloudPercent")
            ?? throw line.Fault("cloudPercent", "it is missing; accepted: an array of numbers, null where unknown");
        Instants(InstantQuantity.CloudAreaFraction, "cloudPercent", 0.01);
        Instants(InstantQuantity.AirTemperatureC, "airC", 1);
        Instants(InstantQuantity.DewPointC, "dewPointC", 1);
        Instants(InstantQuantity.WindMps, "windMps", 1);
        Periods(PeriodQuantity.PrecipitationMm, "rainMm", 1);
        Periods(PeriodQuantity.PrecipitationProbability, "rainProbabilityPercent", 0.01);
        Periods(PeriodQuantity.GustMps, "gustMps", 1);
        return Built(builder, header, issued, issued);

        void Instants(InstantQuantity quantity, string field, double scale)
        {
            foreach (var (at, value) in Values(field)) builder.Add(quantity, at, value * scale);
        }

        void Periods(PeriodQuantity quantity, string field, double scale)
        {
            foreach (var (at, value) in Values(field)) builder.Add(quantity, at - step, at, value * scale);
        }

        IEnumerable<(Instant At, double? Value)> Values(string field)
        {
            if (line.Row(field) is not { } row) yield break;
            if (row.Length != cloud.Length)
            {
                throw line.Fault(
                    field, FormattableString.Invariant($"it has {row.Length} values; accepted: as many as cloudPercent, {cloud.Length}"));
            }

            for (var i = 0; i < row.Length; i++)
            {
                if (start + step * i is var at && at <= end) yield return (at, row[i]);
            }
        }
    }

    /// <summary>An archive names its source in words and gives no address.</summary>
    private static ForecastSeries Built(ForecastSeriesBuilder builder, ArchiveHeader header, Instant? issued, Instant retrieved) =>
        builder.Build(header.Feed, "mixed", issued, retrieved, new Attribution(header.Source, new Uri("about:blank"), ""),
        new ForecastCell(header.LatitudeDeg, header.LongitudeDeg, header.ElevationM));

    private static ArchiveFormatException Empty(ArchiveHeader? header, string what) =>
        header is null ? new(1, "", "the file is empty; accepted: a header line first")
        : new(2, "", $"the archive holds no {what}; accepted: one a line below the header");

    /// <summary>The lines of a file that hold something, with their numbers from 1.</summary>
    /// <exception cref="ArchiveFormatException">The compressed file is damaged.</exception>
    public static IEnumerable<(string Text, int Number)> Lines(byte[] file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var isZipped = file is [0x1f, 0x8b, ..];
        using Stream stream = isZipped ? new GZipStream(new MemoryStream(file), CompressionMode.Decompress) : new MemoryStream(file);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        for (var number = 1; Next(reader, number) is { } text; number++)
        {
            if (!string.IsNullOrWhiteSpace(text)) yield return (text, number);
        }
    }

    private static string? Next(StreamReader reader, int number)
    {
        try
        {
            return reader.ReadLine();
        }
        catch (Exception damaged) when (damaged is InvalidDataException or EndOfStreamException)
        {
            throw new ArchiveFormatException(
                FormattableString.Invariant($"line {number}: the compressed file is damaged here; accepted: a whole gzip file."), damaged);
        }
    }
}
